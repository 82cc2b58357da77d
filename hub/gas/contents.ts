import type { GasBand } from '../contract/gas.ts';
import {
  type ContentsConfig,
  type ContentsState,
  contentsByFlow,
  noteFill,
  stepContents,
} from '../physics/gas-supply/contents-by-flow.ts';
import { FLOW_ERROR_SHARE } from '../physics/gas-supply/orifice-report.ts';
import { flowOf, mostFlow } from './flow.ts';
import type { GasCell, GasConfig, GasSupply, Heard } from './types.ts';

/** What is left in a supply: by the scale where its tare is known, else counted down from a noted fill. */

/** Of a floor scale with its tare, kg. Common practice, no source. */
export const SCALE_ERROR_KILOGRAMS = 0.2;
/** A filling by weight is good to this share. Common practice, no source. */
const FILL_ERROR_SHARE = 0.03;
/** A pressure is believed for this long, then nobody knows the flow. */
const HOLD_MS = 30_000;

/** The freshest of several channels in a cell: the highest of those that spoke. Null: none did. */
export function highestIn(cell: Pick<GasCell, 'values'>, channels: readonly Heard[]): number | null {
  const found = channels.flatMap(({ id }) => cell.values[id]?.mean ?? []);
  return found.length === 0 ? null : Math.max(...found);
}

/** Gas on the scale, kg; null: no reading, or nobody knows the tare. */
export function weighedKilograms(config: GasConfig, supply: GasSupply, cell: GasCell): number | null {
  const shown = highestIn(cell, supply.scales);
  return shown === null || config.tareKilograms === null ? null : Math.max(0, shown - config.tareKilograms);
}

export function weighedBand(kilograms: number): GasBand {
  return {
    low: Math.max(0, kilograms - SCALE_ERROR_KILOGRAMS),
    value: kilograms,
    high: kilograms + SCALE_ERROR_KILOGRAMS,
  };
}

export function contentsConfig(supply: GasSupply): ContentsConfig {
  const most = supply.furnaces.reduce((sum, { gas }) => sum + mostFlow(gas), 0);
  return { flowErrorShare: FLOW_ERROR_SHARE, mostKilogramsPerHour: most, longestHoldMs: HOLD_MS };
}

/** Flow of all furnaces on a supply, kg/h; null: the pressure of one of them is not known. */
export function supplyFlow(supply: GasSupply, cell: GasCell): number | null {
  let sum = 0;
  for (const { gas, pressures } of supply.furnaces) {
    const pascals = highestIn(cell, pressures);
    if (pascals === null) return null;
    sum += flowOf(gas, pascals);
  }
  return sum;
}

/** A noted fill as the start of the count. */
export function startCount(atMs: number, kilograms: number): ContentsState {
  const error = kilograms * FILL_ERROR_SHARE;
  return noteFill(atMs, { low: kilograms - error, value: kilograms, high: kilograms + error });
}

/** The count after a cell. Pure. Null: no fill was ever noted. */
export function stepCount(supply: GasSupply, old: ContentsState | null, cell: GasCell): ContentsState | null {
  const fill = cell.fills.filter((each) => each.supply === supply.id).at(-1);
  const from = fill === undefined ? old : startCount(fill.at, fill.kilograms);
  if (from === null || cell.to < from.atMs) return from;
  return stepContents(contentsConfig(supply), from, {
    atMs: cell.to,
    kilogramsPerHour: supplyFlow(supply, cell),
  });
}

export const leftByCount = contentsByFlow;
