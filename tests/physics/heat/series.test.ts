/** The stepper against exact series, and the order at which it closes in on them. */
import { describe, expect, it } from 'vitest';
import { type Body, makeBody, type Shape } from '../../../hub/physics/heat/body.ts';
import { type ChainState, implicitStep } from '../../../hub/physics/heat/chain.ts';
import { plainMaterial } from '../../../hub/physics/heat/material.ts';
import { startPiece } from '../../../hub/physics/heat/piece.ts';
import { amplitude, eigenvalues, exactTheta } from '../../reference/heat-series.ts';
import { ONE_TERM } from '../../reference/heat-values.ts';

const SHAPES: readonly Shape[] = ['plate', 'bar', 'sphere'];
const START = 800;
const MEDIUM = 20;

/** alpha = 1e-5 m²/s and a half section of 10 mm: a Fourier number of 1 is 10 s. */
function unitBody(shape: Shape, intervals: number): Body {
  const material = plainMaterial({ densityKgM3: 8000, specificHeatJKgK: 500, conductivityWmK: 40 });
  return makeBody({ shape, sectionMetres: 0.02, material, intervals });
}

/** Computed theta at core and surface after Fourier number `fo` in `steps` equal steps. */
function computed(shape: Shape, bi: number, fo: number, intervals: number, steps: number) {
  const body = unitBody(shape, intervals);
  const exposure = { surroundingsCelsius: MEDIUM, emissivity: 0, film: (bi * 40) / 0.01 };
  let state: ChainState = startPiece(body, START);
  for (let i = 0; i < steps; i++) {
    state = implicitStep(body.chain, state, (fo * 10) / steps, exposure, MEDIUM).state;
  }
  const theta = (celsius: number | undefined): number =>
    ((celsius ?? Number.NaN) - MEDIUM) / (START - MEDIUM);
  return { core: theta(state.celsius[0]), surface: theta(state.celsius.at(-1)) };
}

function worstError(shape: Shape, bi: number, fo: number, intervals: number, steps: number): number {
  const { core, surface } = computed(shape, bi, fo, intervals, steps);
  const atCore = Math.abs(core - exactTheta(shape, bi, fo, 0));
  return Math.max(atCore, Math.abs(surface - exactTheta(shape, bi, fo, 1)));
}

describe('the reference series itself', () => {
  it.each(ONE_TERM)('has the printed first eigenvalues and amplitudes at Bi %d', (bi, ...printed) => {
    for (const [i, shape] of SHAPES.entries()) {
      const [zeta, a1] = printed[i] ?? [Number.NaN, Number.NaN];
      const [first = Number.NaN] = eigenvalues(shape, bi, 1);
      expect(Math.abs(first - zeta), shape).toBeLessThan(0.6e-4);
      expect(Math.abs(amplitude(shape, first) - a1), shape).toBeLessThan(0.6e-4);
    }
  });

  it('starts from 1 everywhere inside', () => {
    expect(exactTheta('sphere', 1, 1e-3, 0, 60)).toBeCloseTo(1, 6);
    expect(exactTheta('plate', 1, 1e-3, 0, 60)).toBeCloseTo(1, 6);
  });
});

describe('conduction against the exact series', () => {
  const cases = SHAPES.flatMap((shape) =>
    [0.01, 0.1, 1, 10, 100].flatMap((bi) => [0.1, 0.2, 0.5, 1, 2].map((fo) => [shape, bi, fo] as const)),
  );

  // Stated bound: 0.8 % of the first difference with 20 intervals and 400 steps a Fourier number.
  // Backward Euler's own share, zeta⁴ Fo dFo theta / 2, is 0.7 % for the worst case (sphere, Bi 100, Fo 0.2).
  it.each(cases)('%s, Bi %d, Fo %d: core and surface within 0.008', (shape, bi, fo) => {
    expect(worstError(shape, bi, fo, 20, Math.ceil(400 * fo))).toBeLessThan(0.008);
  });

  const hardest = cases.filter(([, bi, fo]) => bi >= 1 && fo <= 0.2);
  it.each(hardest)('%s, Bi %d, Fo %d: within 0.0025 with four times the steps', (shape, bi, fo) => {
    expect(worstError(shape, bi, fo, 20, Math.ceil(1600 * fo))).toBeLessThan(0.0025);
  });

  it.each(SHAPES)('the error of a %s falls in proportion to the time step', (shape) => {
    const errors = [20, 40, 80].map((steps) => worstError(shape, 1, 0.5, 100, steps));
    expect(orderOf(errors)).toBeGreaterThan(0.9);
    expect(orderOf(errors)).toBeLessThan(1.2);
  });

  it.each(SHAPES)('the error of a %s falls with the square of the node distance', (shape) => {
    const errors = [5, 10, 20].map((n) => worstError(shape, 1, 0.5, n, 2 * n * n));
    expect(orderOf(errors)).toBeGreaterThan(1.8);
    expect(orderOf(errors)).toBeLessThan(2.3);
  });
});

/** Mean order over a row of errors, each from a refinement by 2. */
function orderOf(errors: readonly number[]): number {
  const first = errors[0] ?? Number.NaN;
  const last = errors.at(-1) ?? Number.NaN;
  return Math.log2(first / last) / (errors.length - 1);
}
