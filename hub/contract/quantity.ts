import type { Quantity } from './units.ts';

/** What a quantity is to the shop: its words and the widest values that any sensor of it could mean. */
export interface QuantityFacts {
  readonly label: string;
  /** Widest possible values, base unit. A reading outside is kept as bad and never judged. */
  readonly possible: { readonly low: number; readonly high: number };
  /** Without news for this long, a channel is not watching any more. Seconds. Common practice, no source. */
  readonly staleAfterSeconds: number;
  readonly decimals: number;
}

/**
 * Temperature: below any thermocouple table's usual end up to the end of type B (1820 °C, IEC 60584-1).
 * Pressure: gauge; below is a vacuum, above is past a propane cylinder's relief valve.
 * Carbon monoxide: an electrochemical cell's largest stated range is 10 000 ppm; small negatives are zero drift.
 * Carbon dioxide and oxygen: up to the pure gas; small negatives are zero drift. Humidity: a wet sensor reads a
 * little over 100 %.
 */
export const QUANTITY_FACTS: Readonly<Record<Quantity, QuantityFacts>> = {
  temperature: {
    label: 'Temperature',
    possible: { low: -60, high: 1820 },
    staleAfterSeconds: 20,
    decimals: 0,
  },
  pressure: {
    label: 'Gas pressure',
    possible: { low: -101_325, high: 4_000_000 },
    staleAfterSeconds: 30,
    decimals: 0,
  },
  'carbon-monoxide': {
    label: 'Carbon monoxide',
    possible: { low: -20, high: 10_000 },
    staleAfterSeconds: 30,
    decimals: 0,
  },
  mass: { label: 'Cylinder mass', possible: { low: -1, high: 500 }, staleAfterSeconds: 120, decimals: 1 },
  emf: {
    label: 'Thermocouple emf',
    possible: { low: -0.011, high: 0.08 },
    staleAfterSeconds: 20,
    decimals: 6,
  },
  'carbon-dioxide': {
    label: 'Carbon dioxide',
    possible: { low: -100, high: 1_000_000 },
    staleAfterSeconds: 120,
    decimals: 0,
  },
  oxygen: { label: 'Oxygen', possible: { low: -0.5, high: 100 }, staleAfterSeconds: 120, decimals: 1 },
  'relative-humidity': {
    label: 'Relative humidity',
    possible: { low: -5, high: 105 },
    staleAfterSeconds: 120,
    decimals: 0,
  },
};
