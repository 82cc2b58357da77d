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

/** How far below the start of forging a furnace is set, °C: what it swings about. Common practice, no source. */
const BELOW_FORGING_START_CELSIUS = 10;

/**
 * Where a furnace is set for a batch, °C: the middle of what suits it, and for forging near the hot end, where
 * forging starts; never above the rating. Null: it cannot get there.
 */
export function targetIn(
  { step, lowCelsius, highCelsius }: Batch,
  furnace: BenchFurnaceState,
): number | null {
  if (lowCelsius > furnace.ratedCelsius) return null;
  const most = Math.min(highCelsius, furnace.ratedCelsius);
  if (step === 'forge') return Math.max(lowCelsius, most - BELOW_FORGING_START_CELSIUS);
  return (lowCelsius + most) / 2;
}

/** The furnace for a batch: of the most usual kind, then the one nearest to its heat now; null: none gets there. */
export function furnaceFor(batch: Batch, furnaces: readonly BenchFurnaceState[]): BenchFurnaceState | null {
  const able = furnaces.filter((furnace) => targetIn(batch, furnace) !== null);
  const rank = (furnace: BenchFurnaceState) => USUAL[batch.step].indexOf(furnace.kind);
  const away = (furnace: BenchFurnaceState) =>
    Math.abs((targetIn(batch, furnace) ?? 0) - (furnace.presentCelsius ?? COLD_CELSIUS));
  return able.toSorted((a, b) => rank(a) - rank(b) || away(a) - away(b))[0] ?? null;
}
