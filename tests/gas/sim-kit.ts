import { airCells, CELL_MS } from '../../hub/air/cell.ts';
import { FurnaceGas } from '../../hub/contract/gas.ts';
import type { ChannelReading } from '../../hub/contract/reading.ts';
import { gasFindings } from '../../hub/gas/findings.ts';
import { startGas, stepGas } from '../../hub/gas/judge.ts';
import type { GasCell, GasConfig, GasKind, GasState, NotedFill } from '../../hub/gas/types.ts';
import { type BehaviourInput, behaviour } from '../../sensors-sim/behaviours/behaviour.ts';
import type { PlannedFiring } from '../../sensors-sim/operators/firing-desk.ts';
import { FORGE_ANNEAL } from '../../sensors-sim/plans.ts';
import type { CylinderStart } from '../../sensors-sim/plant/cylinder.ts';
import { type Simulation, simulate } from '../../sensors-sim/run.ts';
import { MORNING } from '../harness/shop.ts';

/** The simulated forge straight into the judge of its gas: what the whole hub does, in a tenth of the time. */

/** How much is measured: the pressure alone, a scale too, gauge and thermocouple on the cylinder too. */
export type Measured = 'pressure' | 'scale' | 'whole';

export interface GasRun {
  readonly minutes: number;
  readonly measured?: Measured;
  readonly seed?: number;
  readonly operator?: PlannedFiring['operator'];
  readonly behaviours?: readonly BehaviourInput[];
  readonly cylinder?: CylinderStart;
  readonly closesAtMinute?: number;
  readonly fills?: readonly NotedFill[];
  /** True: this minute of the forge node never arrives. */
  readonly lost?: (minute: number) => boolean;
}

export interface Told {
  readonly kind: GasKind;
  readonly minute: number;
}

export interface Ran {
  /** Each kind when it was first told, in order. */
  readonly told: readonly Told[];
  readonly kinds: readonly string[];
  readonly standing: readonly string[];
  readonly state: GasState;
  readonly config: GasConfig;
  readonly cells: readonly GasCell[];
  readonly truth: Simulation['truth'];
}

/** 0.889 mm and 0.85: the simulated forge's own jet. */
export const BURNER = FurnaceGas.parse({ boreMm: 0.889, lowPascals: 5000, highPascals: 100_000 });

const heard = (id: string) => ({ id, staleAfterSeconds: 20 });

export function configFor(measured: Measured): GasConfig {
  const furnace = {
    id: 'forge',
    name: 'Forge',
    gas: BURNER,
    pressures: [heard('supply-pressure')],
    chambers: [heard('chamber')],
  };
  const whole = measured === 'whole';
  return {
    supplies: [
      {
        id: 'forge',
        furnaces: [furnace],
        scales: measured === 'pressure' ? [] : [heard('cylinder-mass')],
        cylinderPressures: whole ? [heard('cylinder-pressure')] : [],
        walls: whole ? [heard('cylinder-wall')] : [],
      },
    ],
    hotAboveCelsius: 100,
    tareKilograms: 0,
    cylinderKilograms: 9,
    cylinders: 1,
  };
}

const WANTED = ['chamber', 'supply-pressure', 'cylinder-mass', 'cylinder-pressure', 'cylinder-wall'];

/** One anneal in the forge, lit after a minute. */
export function runGas(run: GasRun): Ran {
  const config = configFor(run.measured ?? 'whole');
  const simulation = simulate({
    seed: run.seed ?? 11,
    startMs: MORNING,
    seconds: run.minutes * 60,
    publishEverySeconds: 2,
    furnacePlan: [{ plan: FORGE_ANNEAL, startMs: MORNING + 60_000, operator: run.operator ?? 'good' }],
    behaviours: (run.behaviours ?? []).map(behaviour),
    fittings: ['cylinder-gauges'],
    ...(run.cylinder === undefined ? {} : { cylinder: run.cylinder }),
  });
  const readings = readingsOf(simulation, run.lost ?? (() => false));
  const cells = [...airCells(readings, MORNING, MORNING + run.minutes * 60_000, () => null)].map((cell) => ({
    ...cell,
    ...about(run, simulation, cell),
  }));
  return judged(config, cells, simulation);
}

function judged(config: GasConfig, cells: readonly GasCell[], simulation: Simulation): Ran {
  let state = startGas(config, MORNING);
  const told: Told[] = [];
  for (const cell of cells) {
    state = stepGas(config, state, cell);
    for (const { kind } of gasFindings(config, state)) {
      const known = told.some((each) => each.kind === kind);
      if (!known) told.push({ kind: kind as GasKind, minute: (cell.to - MORNING) / 60_000 });
    }
  }
  const standing = gasFindings(config, state).map(({ kind }) => kind);
  return {
    told,
    kinds: told.map(({ kind }) => kind),
    standing,
    state,
    config,
    cells,
    truth: simulation.truth,
  };
}

function readingsOf(simulation: Simulation, lost: (minute: number) => boolean): ChannelReading[] {
  const readings: ChannelReading[] = [];
  for (const { topic, payload, atMs } of simulation) {
    if (!topic.includes('forge-node') || !payload.startsWith('[') || lost((atMs - MORNING) / 60_000))
      continue;
    readings.push(...unpacked(payload));
  }
  return readings.sort((a, b) => a.at - b.at);
}

interface Record1 {
  readonly bt?: number;
  readonly bn?: string;
  readonly n?: string;
  readonly t?: number;
  readonly v?: number;
}

/** SenML (RFC 8428) as the simulated nodes write it. */
function unpacked(payload: string): ChannelReading[] {
  const records = JSON.parse(payload) as readonly Record1[];
  let [time, name] = [0, ''];
  return records.flatMap(({ bt, bn, n = '', t = 0, v }) => {
    time = bt ?? time;
    name = bn ?? name;
    const channel = WANTED.find((each) => `${name}${n}`.endsWith(each));
    if (channel === undefined || v === undefined) return [];
    return [{ channel, at: Math.round((time + t) * 1000), value: v, quality: 'good' as const }];
  });
}

type About = Pick<GasCell, 'firings' | 'fills' | 'afterClosing'>;

/** The firing runs from the lighting to a minute after the piece is out; a ramp or a soak wants heat. */
function about(run: GasRun, simulation: Simulation, { from, to }: { from: number; to: number }): About {
  const began = simulation.events.find(({ what }) => what === 'started')?.atMs ?? Number.POSITIVE_INFINITY;
  const out = simulation.events.find(
    (event) => event.what === 'segment' && FORGE_ANNEAL.segments[event.segmentIndex]?.kind === 'cool',
  )?.atMs;
  const over = (out ?? Number.POSITIVE_INFINITY) + 60_000;
  const running = to > began && to <= over;
  const wanted = to <= (out ?? Number.POSITIVE_INFINITY);
  const targetCelsius = wanted ? 860 : null;
  const heatEndsAt = began + 40 * 60_000;
  const closes = run.closesAtMinute;
  return {
    firings: running ? [{ firingId: 'firing', furnaceId: 'forge', wanted, targetCelsius, heatEndsAt }] : [],
    fills: (run.fills ?? []).filter(({ at }) => at > from && at <= to),
    afterClosing: closes === undefined ? null : to >= MORNING + closes * 60_000,
  };
}

export { CELL_MS };
