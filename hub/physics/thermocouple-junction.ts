/**
 * Cold-junction compensation, and undoing the straight line of simple digitisers.
 *
 * Both work on emf. Adding the junction temperature to the measured temperature
 * difference is the common mistake: for type N at 605 °C with the terminals at
 * 30 °C it reads 9.6 °C too high.
 */

import { PhysicsError } from './errors.ts';
import { emfMillivolts } from './thermocouple.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';
import { celsiusFromEmf } from './thermocouple-inverse.ts';

/** What a channel that carries raw emf knows. */
export interface JunctionReading {
  readonly type: ThermocoupleType;
  /** Emf measured at the terminals, mV. */
  readonly millivolts: number;
  /** Temperature of the terminals, °C, within `functionRange(type)`. */
  readonly coldJunctionCelsius: number;
}

/**
 * Temperature of the hot junction: t = E⁻¹(V + E(t_cold)).
 *
 * @returns °C
 * @throws PhysicsError `out-of-range` when the junction or the summed emf lies
 *   outside the reference function; `no-solution` in the two-valued region of type B
 *
 * Source: common practice, stated in thermocouple makers' calculation notes.
 */
export function hotJunctionCelsius(reading: JunctionReading): number {
  const { type, millivolts, coldJunctionCelsius } = reading;
  return celsiusFromEmf(type, millivolts + emfMillivolts(type, coldJunctionCelsius));
}

/**
 * Slopes that straight-line digitisers assume, mV per °C, by thermocouple type.
 *
 * K: published, Maxim 19-5793 (MAX31855). The others: from memory: Maxim 19-5793
 * Table 1; each equals the chord of the ITS-90 function from 0 to 1000 °C
 * (0 to 400 °C for T), which the tests check. There is no part for type B.
 */
export const straightLineSlopes: Readonly<Partial<Record<ThermocoupleType, number>>> = {
  E: 0.076373,
  J: 0.057953,
  K: 0.041276,
  N: 0.036256,
  R: 0.010506,
  S: 0.009587,
  T: 0.05218,
};

/** A temperature as a straight-line digitiser reports it. */
export interface StraightLineReading {
  readonly type: ThermocoupleType;
  /** Temperature that the digitiser reports for the probe, °C. */
  readonly reportedCelsius: number;
  /** Temperature of its own terminals that it reports or used, °C. */
  readonly coldJunctionCelsius: number;
  /** Slope it assumes, mV per °C, above 0; see `straightLineSlopes`. */
  readonly slopeMillivoltsPerCelsius: number;
}

/**
 * Hot-junction temperature from the report of a digitiser that assumes one slope:
 * the emf it measured is V = slope·(t_reported − t_cold), which is then
 * compensated and inverted properly.
 *
 * The chip's step (0.25 °C on the MAX31855) stays in the result.
 *
 * @returns °C
 * @throws PhysicsError `bad-input` for a slope that is not positive; otherwise as
 *   `hotJunctionCelsius`
 *
 * Source: Maxim 19-5793, temperature conversion (published).
 */
export function undoStraightLine(reading: StraightLineReading): number {
  const { type, reportedCelsius, coldJunctionCelsius } = reading;
  const slope = requireSlope(reading.slopeMillivoltsPerCelsius);
  const millivolts = slope * (reportedCelsius - coldJunctionCelsius);
  return hotJunctionCelsius({ type, millivolts, coldJunctionCelsius });
}

/** A hot junction as a straight-line digitiser sees it. */
export interface StraightLineSituation {
  readonly type: ThermocoupleType;
  readonly hotCelsius: number;
  readonly coldJunctionCelsius: number;
  /** Slope the digitiser assumes, mV per °C, above 0. */
  readonly slopeMillivoltsPerCelsius: number;
}

/**
 * What a straight-line digitiser would report, before rounding to its step: the
 * counterpart of `undoStraightLine`, for simulated nodes and for showing the error.
 *
 * @returns °C
 * @throws PhysicsError `out-of-range` beyond the reference function; `bad-input`
 *   for a slope that is not positive
 */
export function straightLineReport(situation: StraightLineSituation): number {
  const { type, hotCelsius, coldJunctionCelsius } = situation;
  const slope = requireSlope(situation.slopeMillivoltsPerCelsius);
  const millivolts = emfMillivolts(type, hotCelsius) - emfMillivolts(type, coldJunctionCelsius);
  return coldJunctionCelsius + millivolts / slope;
}

function requireSlope(slope: number): number {
  if (slope > 0 && Number.isFinite(slope)) return slope;
  throw new PhysicsError('bad-input', `slope is ${slope} mV/°C, must be a positive number`, { slope });
}
