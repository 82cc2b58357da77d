/**
 * Implicit finite volumes on a chain of nodes, insulated at the first node and
 * exposed to its surroundings at the last.
 *
 * Each node keeps its heat content. Backward Euler couples them; the relation
 * between heat content and temperature is solved by the iteration of
 * Swaminathan and Voller (Metall. Trans. B 23 (1992) 651): what leaves one node
 * arrives in the next by construction, so energy is conserved to rounding
 * across any peak and at any step, converged or not. First order in time,
 * second in space, and never oscillating: the matrix is an M-matrix.
 */
import { type Exposure, fluxInto, fluxSlope } from './exposure.ts';
import type { Material, Settled } from './material.ts';
import { solveTridiagonal } from './tridiagonal.ts';

/** The fixed part: masses, conducting paths, materials. */
export interface Chain {
  /** kg of each node. */
  readonly massKg: readonly number[];
  /** Area over distance between a node and the next, m: conductance = k times this. One fewer than nodes. */
  readonly pathMetres: readonly number[];
  readonly material: readonly Material[];
  /** Which material conducts between a node and the next. One fewer than nodes. */
  readonly pathMaterial: readonly Material[];
  /** Exposed area at the last node, m². */
  readonly outerAreaM2: number;
}

/** The moving part. All arrays have one entry a node. */
export interface ChainState {
  readonly celsius: readonly number[];
  readonly enthalpyJKg: readonly number[];
  readonly austenite: readonly number[];
}

export interface ChainStep {
  readonly state: ChainState;
  /** Heat that came in through the outer area during the step, J. */
  readonly heatInJoules: number;
  readonly iterations: number;
  readonly converged: boolean;
}

/** Far below any reading; energy is exact whatever this is. */
const CLOSE_ENOUGH_K = 1e-5;
const MOST_ITERATIONS = 40;

/**
 * One implicit step of `seconds` towards surroundings at `surroundingsCelsius`.
 *
 * @param seconds more than 0
 */
export function implicitStep(
  chain: Chain,
  from: ChainState,
  seconds: number,
  exposure: Exposure,
  surroundingsCelsius: number,
): ChainStep {
  const resettle = (enthalpy: readonly number[]): Settled[] =>
    enthalpy.map((h, i) => settleNode(chain, from, seconds, h, i));
  let enthalpy = from.enthalpyJKg;
  let settled = resettle(enthalpy);
  let flux = 0;
  let iterations = 0;
  let converged = false;
  while (!converged && iterations < MOST_ITERATIONS) {
    const solved = solveOnce(chain, from, { seconds, exposure, surroundingsCelsius, enthalpy, settled });
    flux = solved.heatW;
    enthalpy = solved.enthalpy;
    settled = resettle(enthalpy);
    iterations += 1;
    converged = settled.every((node, i) => Math.abs(node.celsius - at(solved.celsius, i)) < CLOSE_ENOUGH_K);
  }
  return { state: stateOf(enthalpy, settled), heatInJoules: flux * seconds, iterations, converged };
}

interface Iterate {
  readonly seconds: number;
  readonly exposure: Exposure;
  readonly surroundingsCelsius: number;
  readonly enthalpy: readonly number[];
  readonly settled: readonly Settled[];
}

interface Solved {
  readonly celsius: number[];
  readonly enthalpy: number[];
  /** Heat through the outer area, W. */
  readonly heatW: number;
}

/** One linear solve: the balance of every node with its capacity and the film taken as they are now. */
function solveOnce(chain: Chain, from: ChainState, now: Iterate): Solved {
  const n = chain.massKg.length;
  const conductance = conductances(chain, now.settled);
  const storing = now.settled.map((node, i) => (at(chain.massKg, i) * node.capacityJKgK) / now.seconds);
  const diagonal = new Array<number>(n).fill(0);
  const right = new Array<number>(n).fill(0);
  for (let i = 0; i < n; i++) {
    const celsius = celsiusOf(now.settled, i);
    const gained = at(now.enthalpy, i) - at(from.enthalpyJKg, i);
    diagonal[i] = at(storing, i) + at(conductance, i - 1) + at(conductance, i);
    right[i] = at(storing, i) * celsius - (at(chain.massKg, i) * gained) / now.seconds;
  }
  const surface = celsiusOf(now.settled, n - 1);
  const slope = chain.outerAreaM2 * fluxSlope(now.exposure, surface);
  const heat = chain.outerAreaM2 * fluxInto(now.exposure, now.surroundingsCelsius, surface);
  diagonal[n - 1] = at(diagonal, n - 1) + slope;
  right[n - 1] = at(right, n - 1) + heat + slope * surface;

  const celsius = solveTridiagonal(conductance, diagonal, right);
  const enthalpy = celsius.map(
    (t, i) => at(now.enthalpy, i) + capacityOf(now.settled, i) * (t - celsiusOf(now.settled, i)),
  );
  return { celsius, enthalpy, heatW: heat - slope * (at(celsius, n - 1) - surface) };
}

function conductances(chain: Chain, settled: readonly Settled[]): number[] {
  return chain.pathMetres.map((path, i) => {
    const material = chain.pathMaterial[i];
    if (material === undefined) return 0;
    const here = material.conductivity(celsiusOf(settled, i));
    const next = material.conductivity(celsiusOf(settled, i + 1));
    return (path * (here + next)) / 2;
  });
}

function settleNode(
  chain: Chain,
  from: ChainState,
  seconds: number,
  enthalpyJKg: number,
  i: number,
): Settled {
  const memory = { celsius: at(from.celsius, i), austenite: at(from.austenite, i), seconds };
  const material = chain.material[i];
  if (material === undefined) throw new RangeError(`chain has no material for node ${i}`);
  return material.settle(enthalpyJKg, memory);
}

function stateOf(enthalpyJKg: readonly number[], settled: readonly Settled[]): ChainState {
  const celsius = settled.map((node) => node.celsius);
  return { celsius, enthalpyJKg, austenite: settled.map((node) => node.austenite) };
}

/** Entry of an array, 0 beyond its ends: a chain conducts to nothing there. */
function at(values: readonly number[], index: number): number {
  return values[index] ?? 0;
}

function celsiusOf(settled: readonly Settled[], index: number): number {
  return settled[index]?.celsius ?? 0;
}

function capacityOf(settled: readonly Settled[], index: number): number {
  return settled[index]?.capacityJKgK ?? 0;
}
