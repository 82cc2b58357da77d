/**
 * ITS-90 thermocouple reference functions: emf and its slope from temperature.
 *
 * Source: NIST Standard Reference Database 60 / Monograph 175, the same
 * functions as IEC 60584-1 (published). The inverse is in thermocouple-inverse.ts.
 */

import { requireRange } from './errors.ts';
import { type DirectPiece, directPieces, type ThermocoupleType } from './thermocouple-direct-table.ts';

/** The eight letter-designated types, in alphabetical order. */
export const thermocoupleTypes: readonly ThermocoupleType[] = ['B', 'E', 'J', 'K', 'N', 'R', 'S', 'T'];

/** A span of temperature, both ends included, °C. */
export interface CelsiusRange {
  readonly lowCelsius: number;
  readonly highCelsius: number;
}

/**
 * The range over which the reference function of `type` is defined, °C.
 * Both ends belong to it. Source: NIST SRD 60 (published).
 */
export function functionRange(type: ThermocoupleType): CelsiusRange {
  const pieces = directPieces[type];
  const lowCelsius = pieces[0]?.lowCelsius ?? Number.NaN;
  const highCelsius = pieces.at(-1)?.highCelsius ?? Number.NaN;
  return { lowCelsius, highCelsius };
}

/**
 * Emf of a thermocouple with its reference junction at 0 °C.
 *
 * @param celsius temperature of the measuring junction, within `functionRange(type)`
 * @returns millivolts
 * @throws PhysicsError `out-of-range` beyond either end of the function, or for NaN
 */
export function emfMillivolts(type: ThermocoupleType, celsius: number): number {
  return pieceMillivolts(pieceAt(type, celsius), celsius);
}

/**
 * Sensitivity (Seebeck coefficient) dE/dt of a thermocouple.
 *
 * At a join of two sub-ranges the lower one answers; the published slopes agree
 * there to 5 digits, except type N at 0 °C (26.159 below, 25.929 µV/°C above).
 *
 * @param celsius temperature of the junction, within `functionRange(type)`
 * @returns millivolts per °C (type B is negative below 21 °C)
 * @throws PhysicsError `out-of-range` beyond either end of the function, or for NaN
 */
export function emfSlopeMillivoltsPerCelsius(type: ThermocoupleType, celsius: number): number {
  return pieceSlope(pieceAt(type, celsius), celsius);
}

/** Value of one sub-range, mV. `celsius` is not checked: the solver probes ends. */
export function pieceMillivolts(piece: DirectPiece, celsius: number): number {
  let sum = 0;
  for (let i = piece.coefficients.length - 1; i >= 0; i--) {
    sum = sum * celsius + (piece.coefficients[i] ?? 0);
  }
  return piece.bump === undefined ? sum : sum + bumpMillivolts(piece.bump, celsius);
}

/** Slope of one sub-range, mV per °C. `celsius` is not checked. */
export function pieceSlope(piece: DirectPiece, celsius: number): number {
  let sum = 0;
  for (let i = piece.coefficients.length - 1; i >= 1; i--) {
    sum = sum * celsius + i * (piece.coefficients[i] ?? 0);
  }
  if (piece.bump === undefined) return sum;
  const { a1, a2 } = piece.bump;
  return sum + bumpMillivolts(piece.bump, celsius) * 2 * a1 * (celsius - a2);
}

function bumpMillivolts(bump: NonNullable<DirectPiece['bump']>, celsius: number): number {
  return bump.a0 * Math.exp(bump.a1 * (celsius - bump.a2) ** 2);
}

function pieceAt(type: ThermocoupleType, celsius: number): DirectPiece {
  const { lowCelsius, highCelsius } = functionRange(type);
  requireRange(`type ${type} temperature`, celsius, lowCelsius, highCelsius, '°C');
  for (const piece of directPieces[type]) {
    if (celsius <= piece.highCelsius) return piece;
  }
  throw new RangeError(`no sub-range of type ${type} holds ${celsius} °C`);
}
