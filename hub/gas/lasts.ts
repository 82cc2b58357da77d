import type { GasBand } from '../contract/gas.ts';
import { type EnduranceReport, endurance } from '../physics/gas-supply/endurance.ts';

/** How long the gas lasts, before a firing and in it. */

export interface LastsQuestion {
  /** Left on the line, all cylinders together, kg. */
  readonly contents: GasBand;
  readonly kilogramsPerHour: number;
  /** Full, one cylinder, kg; null: not known. */
  readonly cylinderKilograms: number | null;
  readonly cylinders: number;
  /** Around the cylinders, °C; null: nobody measures it, and the reserve of a cold cylinder is kept. */
  readonly airCelsius: number | null;
}

/** Less than this is no draw that a firing could be reckoned by, kg/h: a pilot flame. */
const LEAST_DRAW = 0.02;

/** Endurance as a range, hours; null for a draw too small to reckon by. */
export function lastsHours(question: LastsQuestion): EnduranceReport | null {
  const { contents, kilogramsPerHour, cylinderKilograms, cylinders, airCelsius } = question;
  if (kilogramsPerHour < LEAST_DRAW) return null;
  const each = (kilograms: number): number => kilograms / cylinders;
  const full = cylinderKilograms ?? undefined;
  return endurance({
    contents: { low: each(contents.low), value: each(contents.value), high: each(contents.high) },
    draw: { kind: 'mass', kilogramsPerHour },
    cylinders,
    ...(full === undefined ? {} : { fullKilograms: full }),
    ...(airCelsius === null ? {} : { airCelsius }),
  });
}
