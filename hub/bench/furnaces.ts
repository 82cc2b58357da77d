import type { RouteHeat } from '../contract/route-template.ts';
import type { Furnace } from '../contract/shop.ts';
import type { Batch } from './batches.ts';

/** Which furnace a batch goes to. */

export interface BenchFurnaceState {
  readonly id: string;
  readonly name: string;
  readonly kind: Furnace['kind'];
  readonly ratedCelsius: number;
  /** Its coldest fresh chamber reading, °C; null: nobody reads it now. */
  readonly presentCelsius: number | null;
  /** It is in a firing: what is proposed comes after that one. */
  readonly runs: boolean;
}

const HOLDS_LONG: readonly Furnace['kind'][] = ['electric-oven', 'salt-bath', 'gas-forge'];
const FORGES: readonly Furnace['kind'][] = ['gas-forge', 'electric-oven', 'salt-bath'];

/** Kinds of furnace for a step, the most usual first. Common practice, no source. */
const USUAL: Readonly<Record<RouteHeat, readonly Furnace['kind'][]>> = {
  forge: FORGES,
  normalise: HOLDS_LONG,
  'full-anneal': HOLDS_LONG,
  spheroidise: HOLDS_LONG,
  'sub-critical-anneal': HOLDS_LONG,
  'stress-relief': HOLDS_LONG,
  austenitise: HOLDS_LONG,
  harden: HOLDS_LONG,
  temper: HOLDS_LONG,
};

export function isUsual(step: RouteHeat, furnace: BenchFurnaceState): boolean {
  return USUAL[step][0] === furnace.kind;
}

/** A furnace that is not read is counted as cold. */
export const COLD_CELSIUS = 20;

/** The middle of what suits the batch, held under the rating of the furnace, °C; null: it cannot get there. */
export function targetIn({ lowCelsius, highCelsius }: Batch, furnace: BenchFurnaceState): number | null {
  if (lowCelsius > furnace.ratedCelsius) return null;
  return (lowCelsius + Math.min(highCelsius, furnace.ratedCelsius)) / 2;
}

/** The furnace for a batch: of the most usual kind, then the one nearest to its heat now; null: none gets there. */
export function furnaceFor(batch: Batch, furnaces: readonly BenchFurnaceState[]): BenchFurnaceState | null {
  const able = furnaces.filter((furnace) => targetIn(batch, furnace) !== null);
  const rank = (furnace: BenchFurnaceState) => USUAL[batch.step].indexOf(furnace.kind);
  const away = (furnace: BenchFurnaceState) =>
    Math.abs((targetIn(batch, furnace) ?? 0) - (furnace.presentCelsius ?? COLD_CELSIUS));
  return able.toSorted((a, b) => rank(a) - rank(b) || away(a) - away(b))[0] ?? null;
}
