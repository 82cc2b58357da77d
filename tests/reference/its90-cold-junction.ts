/**
 * Cold-junction compensation by emf: measured emf, terminals, hot junction.
 *
 * Source: computed apart from this program from the coefficients of NIST SRD 60
 * (a numeric inverse of the direct functions); the procedure is common practice.
 */
import type { ThermocoupleType } from '../../hub/physics/thermocouple-direct-table.ts';

export interface ColdJunctionCase {
  readonly type: ThermocoupleType;
  readonly millivolts: number;
  readonly coldJunctionCelsius: number;
  /** Emf of the terminals, mV, rounded to 0.00001. */
  readonly junctionMillivolts: number;
  /** Hot junction, °C, rounded to 0.001. */
  readonly hotCelsius: number;
  /** What adding temperatures gives instead, °C, rounded to 0.01 (0.1 in one row). */
  readonly addedCelsius: number;
}

const row = (
  type: ThermocoupleType,
  millivolts: number,
  coldJunctionCelsius: number,
  junctionMillivolts: number,
  hotCelsius: number,
  addedCelsius: number,
): ColdJunctionCase => ({
  type,
  millivolts,
  coldJunctionCelsius,
  junctionMillivolts,
  hotCelsius,
  addedCelsius,
});

export const coldJunctionCases: readonly ColdJunctionCase[] = [
  row('K', 30, 25, 1.00024, 744.862, 745.83),
  row('K', 48, 40, 1.61179, 1221.29, 1217.14),
  row('K', -1, 22.5, 0.89906, -2.563, -3.35),
  row('K', 0, 23, 0.91928, 23, 23),
  row('N', 20, 30, 0.79301, 604.617, 614.25),
  row('S', 9, 25, 0.1426, 961.273, 973.76),
  row('R', 10, 25, 0.14058, 972.259, 986.52),
  row('J', 25, 25, 1.27729, 480.025, 482.04),
  row('T', 5, 25, 0.99198, 135.672, 140.24),
  row('E', 40, 25, 1.49511, 555.466, 561.99),
  row('B', 5, 25, -0.00249, 1017.769, 1043.04),
];
