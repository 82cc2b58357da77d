/**
 * The tolerance class of a thermocouple as a band at a temperature.
 *
 * The classes hold for new, homogeneous wire as delivered. They say nothing
 * about drift in service, so a class is not the uncertainty of a used probe.
 */

import { PhysicsError } from './errors.ts';
import type { ProbeProvenance } from './probe-provenance.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';
import { type ToleranceClass, type ToleranceRow, toleranceRows } from './thermocouple-tolerance-table.ts';

/** A tolerance at one temperature: the wire reads within ± `halfWidthCelsius`. */
export interface ToleranceBand {
  readonly halfWidthCelsius: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly from: ProbeProvenance;
}

/**
 * Tolerance of a class at a temperature.
 *
 * @param celsius temperature of the hot junction; percentages in the standards
 *   apply to °C, so they are taken of |celsius|
 * @throws PhysicsError `not-applicable` when the class does not exist for the type
 *   or does not reach this temperature (the message says where it holds); `bad-input` for NaN
 *
 * Source: IEC 60584-1 and ASTM E230 as reprinted; see thermocouple-tolerance-table.ts.
 */
export function toleranceBand(
  type: ThermocoupleType,
  toleranceClass: ToleranceClass,
  celsius: number,
): ToleranceBand {
  if (Number.isNaN(celsius)) throw new PhysicsError('bad-input', 'temperature is not a number', { celsius });
  const rows = toleranceRows.filter((row) => row.class === toleranceClass && row.types.includes(type));
  const row = rows.find((each) => celsius >= each.lowCelsius && celsius <= each.highCelsius);
  if (row === undefined) throw notCovered(type, toleranceClass, celsius, rows);
  const halfWidthCelsius = halfWidth(row, celsius);
  return {
    halfWidthCelsius,
    lowCelsius: celsius - halfWidthCelsius,
    highCelsius: celsius + halfWidthCelsius,
    from: row.from,
  };
}

function halfWidth(row: ToleranceRow, celsius: number): number {
  if (row.beyondCelsius !== undefined) {
    return row.floorCelsius + row.fraction * Math.max(0, celsius - row.beyondCelsius);
  }
  return Math.max(row.floorCelsius, row.fraction * Math.abs(celsius));
}

function notCovered(
  type: ThermocoupleType,
  toleranceClass: ToleranceClass,
  celsius: number,
  rows: readonly ToleranceRow[],
): PhysicsError {
  const ranges = rows.map((row) => `${row.lowCelsius} to ${row.highCelsius} °C`).join(' and ');
  const message =
    rows.length === 0
      ? `there is no tolerance class ${toleranceClass} for type ${type}`
      : `tolerance class ${toleranceClass} of type ${type} holds for ${ranges}, not at ${celsius} °C`;
  return new PhysicsError('not-applicable', message, { type, toleranceClass, celsius });
}
