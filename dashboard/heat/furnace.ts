import type { FurnaceFit } from '../../hub/contract/furnace-fit.ts';
import { FURNACE_KINDS, type Furnace } from '../../hub/contract/shop.ts';

/** How strongly a furnace heats what lies in it, with the range that a furnace of its kind may have. Pure. */

export type FurnaceKind = Furnace['kind'];

/** One guess of how a furnace heats. */
export interface Heating {
  /** Effective, chamber to piece, 0 to 1. */
  readonly emissivity: number;
  readonly filmWattsPerSquareMetreKelvin: number;
}

export interface FurnaceHeat {
  readonly usual: Heating;
  /** The weakest and the strongest that is still likely. */
  readonly weak: Heating;
  readonly strong: Heating;
  /** What was measured on this very furnace; null: what furnaces of its kind usually do. */
  readonly fit: FurnaceFit | null;
}

const heating = (emissivity: number, filmWattsPerSquareMetreKelvin: number): Heating => ({
  emissivity,
  filmWattsPerSquareMetreKelvin,
});

/**
 * Oxidised steel radiates with about 0.8, and less is left between walls and neighbours; burner gas moves, oven air
 * hardly does; molten salt wets, and its radiation is part of the film. Common practice, no source; the numbers with
 * which the hub answers for a furnace that nobody has fitted.
 */
const USUAL: Readonly<Record<FurnaceKind, Omit<FurnaceHeat, 'fit'>>> = {
  'gas-forge': { usual: heating(0.75, 25), weak: heating(0.6, 10), strong: heating(0.9, 50) },
  'electric-oven': { usual: heating(0.7, 10), weak: heating(0.5, 5), strong: heating(0.85, 20) },
  'salt-bath': { usual: heating(0, 600), weak: heating(0, 300), strong: heating(0, 1000) },
};

/** A fitted furnace is still another load on another day: the slack that the hub gives it in a firing too. */
const FIT_SLACK = 0.1;

/** How this furnace heats: its own fit where there is one, else what its kind usually does. */
export function heatOf({ kind, fit }: Pick<ChosenFurnace, 'kind' | 'fit'>): FurnaceHeat {
  if (fit === null) return { ...USUAL[kind], fit: null };
  const { effectiveEmissivity, filmWattsPerSquareMetreKelvin: film } = fit;
  const times = (share: number) => heating(Math.min(1, effectiveEmissivity * share), film * share);
  return { usual: times(1), weak: times(1 - FIT_SLACK), strong: times(1 + FIT_SLACK), fit };
}

/** A pair that its run could not take apart holds this far beyond the heat of the run, K: as the hub has it. */
const FAR_CELSIUS = 100;

/** Whether a heat lies far from those that the fit was made at, so that its two numbers may mislead. */
export function isFarFromFit(fit: FurnaceFit, celsius: number): boolean {
  const { separated, loadLowCelsius, loadHighCelsius } = fit;
  const low = (loadLowCelsius ?? Number.NEGATIVE_INFINITY) - FAR_CELSIUS;
  const high = (loadHighCelsius ?? Number.POSITIVE_INFINITY) + FAR_CELSIUS;
  return !separated && (celsius < low || celsius > high);
}

/** Chosen in place of a furnace of the shop: any of a kind. */
const ANY = 'kind:';

export const ANY_OF_KIND = FURNACE_KINDS.map((kind) => ({ kind, value: `${ANY}${kind}` }));

export interface ChosenFurnace {
  readonly kind: FurnaceKind;
  /** Empty when it is any of its kind. */
  readonly name: string;
  readonly ratedCelsius: number | null;
  readonly fit: FurnaceFit | null;
}

/** The furnace that a choice names; a furnace that is gone meanwhile counts as any gas forge. */
export function furnaceOf(choice: string, furnaces: readonly Furnace[]): ChosenFurnace {
  const own = furnaces.find(({ id }) => id === choice);
  if (own !== undefined) return own;
  const kind = ANY_OF_KIND.find(({ value }) => value === choice)?.kind ?? 'gas-forge';
  return { kind, name: '', ratedCelsius: null, fit: null };
}
