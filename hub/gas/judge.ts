import type { GasBand } from '../contract/gas.ts';
import { QUIET } from '../judging/condition.ts';
import { noteFill } from '../physics/gas-supply/contents-by-flow.ts';
import { highestIn, leftByCount, stepCount, supplyFlow, weighedBand, weighedKilograms } from './contents.ts';
import { stepTrouble } from './trouble.ts';
import type {
  FiringNow,
  FurnaceAt,
  FurnaceGasState,
  GasCell,
  GasConfig,
  GasSample,
  GasState,
  GasSupply,
  SupplyState,
} from './types.ts';
import { stepWatch } from './watch-kinds.ts';
import { MOST_SAMPLES } from './window.ts';

/**
 * The judge of the gas: cells of ten seconds in, what is left, what flows and what is wrong out. It reads no clock:
 * the same cells always give the same answer, so a restart and a late backfill are a replay.
 */

/** Draw is the middle of this many cells with gas flowing: ten minutes. */
const DRAW_CELLS = 60;

const SILENT = {
  'gas-flame-out': QUIET,
  'gas-on-cold': QUIET,
  'gas-will-not-last': QUIET,
  'gas-off-band': QUIET,
  'gas-left-on': QUIET,
} as const;

/** Before the first cell, with what an earlier count had come to. */
export function startGas(
  config: GasConfig,
  at: number,
  counts: Readonly<Record<string, SupplyState['byFlow']>> = {},
): GasState {
  return {
    at,
    furnaces: config.supplies.flatMap(({ furnaces }) =>
      furnaces.map(({ id }) => ({
        id,
        samples: [],
        trouble: null,
        watch: SILENT,
        params: {},
        firing: null,
        flameOutAt: null,
      })),
    ),
    supplies: config.supplies.map(({ id }) => {
      const byFlow = counts[id] ?? null;
      return { id, byFlow, contents: null, contentsFrom: null, drawKilogramsPerHour: null };
    }),
  };
}

/** The next state. Pure. */
export function stepGas(config: GasConfig, state: GasState, cell: GasCell): GasState {
  const supplies = config.supplies.map((supply, i) => {
    const old = state.supplies[i];
    return stepSupply(config, supply, old ?? { ...EMPTY, id: supply.id }, cell);
  });
  const furnaces = config.supplies.flatMap((supply, i) =>
    supply.furnaces.flatMap((furnace) => {
      const old = state.furnaces.find(({ id }) => id === furnace.id);
      const held = supplies[i];
      return old === undefined || held === undefined
        ? []
        : [stepFurnace(config, { supply, furnace, held }, old, cell)];
    }),
  );
  return { at: cell.to, supplies, furnaces };
}

const EMPTY = { byFlow: null, contents: null, contentsFrom: null, drawKilogramsPerHour: null } as const;

function stepSupply(config: GasConfig, supply: GasSupply, old: SupplyState, cell: GasCell): SupplyState {
  const weighed = weighedKilograms(config, supply, cell);
  const draw = drawAfter(old, supplyFlow(supply, cell));
  const common = { id: supply.id, drawKilogramsPerHour: draw };
  if (weighed !== null) {
    const contents = weighedBand(weighed);
    // A scale that falls silent leaves its last word as the fill that is counted from.
    return { ...common, byFlow: noteFill(cell.to, contents), contents, contentsFrom: 'scale' };
  }
  const byFlow = stepCount(supply, old.byFlow, cell);
  const counted: GasBand | null = byFlow === null ? null : leftByCount(byFlow);
  return { ...common, byFlow, contents: counted, contentsFrom: counted === null ? null : 'counted' };
}

/** A slow mean of the flow while gas flows; kept through pauses, since the next heat will take as much. */
function drawAfter({ drawKilogramsPerHour: old }: SupplyState, flow: number | null): number | null {
  if (flow === null || flow === 0) return old;
  return old === null ? flow : old + (flow - old) / DRAW_CELLS;
}

function stepFurnace(
  config: GasConfig,
  about: FurnaceAt,
  old: FurnaceGasState,
  cell: GasCell,
): FurnaceGasState {
  const firing = cell.firings.find(({ furnaceId }) => furnaceId === about.furnace.id) ?? null;
  const sample = sampleOf(config, about, cell, firing);
  const samples = [...old.samples, sample].slice(-MOST_SAMPLES);
  const trouble = isIdle(samples)
    ? null
    : stepTrouble(old.trouble, closedByHand(old, samples, cell.to), cell.to);
  return stepWatch(config, about, { ...old, samples, trouble, firing }, cell);
}

/** Told that the flame is out, the smith closes the gas, as told: gas that is then gone is no trouble. */
const CLOSED_BY_HAND_MS = 1_200_000;

function closedByHand(
  { flameOutAt }: FurnaceGasState,
  samples: readonly GasSample[],
  at: number,
): readonly GasSample[] {
  if (flameOutAt === null || at - flameOutAt > CLOSED_BY_HAND_MS) return samples;
  const last = samples.at(-1);
  return last === undefined ? samples : [...samples.slice(0, -1), { ...last, wanted: false }];
}

/** No pressure anywhere in the window, and nothing weighed: most of the week, and nothing to recognise. */
function isIdle(samples: readonly GasSample[]): boolean {
  return samples.every(
    ({ outletPascals, contentsKilograms }) =>
      (outletPascals ?? 0) < 200 && (contentsKilograms ?? null) === null,
  );
}

function sampleOf(config: GasConfig, about: FurnaceAt, cell: GasCell, firing: FiringNow | null): GasSample {
  const { supply, furnace } = about;
  return {
    atMs: cell.to,
    outletPascals: highestIn(cell, furnace.pressures),
    cylinderPascals: highestIn(cell, supply.cylinderPressures),
    contentsKilograms: weighedKilograms(config, supply, cell),
    wallCelsius: highestIn(cell, supply.walls),
    chamberCelsius: highestIn(cell, furnace.chambers),
    wanted: firing?.wanted ?? false,
    targetCelsius: firing?.targetCelsius ?? null,
  };
}
