/**
 * Temperature from emf by solving the ITS-90 direct function.
 *
 * The published inverse polynomials jump by up to 0.07 °C where their
 * sub-ranges meet, which a record in 0.01 °C steps would show as a step that
 * never happened. Solving the direct function has no such joins.
 */

import { PhysicsError, requireRange } from './errors.ts';
import {
  emfMillivolts,
  emfSlopeMillivoltsPerCelsius,
  functionRange,
  pieceMillivolts,
  pieceSlope,
} from './thermocouple.ts';
import { type DirectPiece, directPieces, type ThermocoupleType } from './thermocouple-direct-table.ts';

/**
 * Type B falls from 0 mV to -0.002585 mV at 21.02 °C and is back at 0 mV only at
 * 42.13 °C (computed from NIST SRD 60), so an emf there has two temperatures.
 * At or below this temperature no inverse is given.
 */
export const typeBLowestCelsius = 50;

/** One stretch of a direct function, small enough that a chord starts Newton well. */
interface Bracket {
  readonly piece: DirectPiece;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly lowMillivolts: number;
  readonly highMillivolts: number;
}

/** What is known of a type before any emf arrives. */
interface InverseTable {
  readonly brackets: readonly Bracket[];
  readonly lowestMillivolts: number;
  readonly highestMillivolts: number;
}

/**
 * Half of the last digit of the printed tables. An emf this far beyond an end
 * gives the end, so that a table's own last value (type E: 76.373 mV printed,
 * 76.3728 mV computed) is not refused.
 */
const printedRoundingMillivolts = 0.0005;
const bracketsPerPiece = 32;
/** Far below the 0.001 °C asked of the round trip and far above rounding noise. */
const toleranceCelsius = 1e-9;
/** Bisection alone needs 36 halvings of the widest bracket to reach the tolerance. */
const maximumSteps = 64;

/**
 * Temperature of the measuring junction from an emf referred to 0 °C.
 *
 * For a junction that is not at 0 °C use `hotJunctionCelsius`: emfs add, degrees
 * do not.
 *
 * @param millivolts emf with the reference junction at 0 °C, within the emfs of
 *   the ends of `functionRange(type)`; up to 0.0005 mV beyond, the rounding of
 *   the printed tables, is taken as the end itself. Type B only above its emf at 50 °C
 * @returns °C, a root of the direct function
 * @throws PhysicsError `out-of-range` beyond the ends, or for NaN; `no-solution`
 *   in the two-valued region of type B
 */
export function celsiusFromEmf(type: ThermocoupleType, millivolts: number): number {
  const { brackets, lowestMillivolts, highestMillivolts } = tables[type];
  const within = withinEnds(millivolts, lowestMillivolts, highestMillivolts);
  requireRange(`type ${type} emf`, within, lowestMillivolts, highestMillivolts, 'mV');
  if (type === 'B') requireSingleValued(within);
  return solve(bracketHolding(brackets, within), within);
}

function withinEnds(millivolts: number, lowest: number, highest: number): number {
  if (millivolts > highest && millivolts <= highest + printedRoundingMillivolts) return highest;
  if (millivolts < lowest && millivolts >= lowest - printedRoundingMillivolts) return lowest;
  return millivolts;
}

function requireSingleValued(millivolts: number): void {
  const limitMillivolts = emfMillivolts('B', typeBLowestCelsius);
  if (millivolts > limitMillivolts) return;
  const message =
    `type B emf is ${millivolts} mV, which belongs to ${typeBLowestCelsius} °C or less: ` +
    'there the type B function is two-valued and nearly flat, so no temperature can be told from it';
  throw new PhysicsError('no-solution', message, { type: 'B', millivolts, limitMillivolts });
}

/** Newton's method on the direct function, falling back to bisection when it would leave the bracket. */
function solve(bracket: Bracket, millivolts: number): number {
  let low = bracket.lowCelsius;
  let high = bracket.highCelsius;
  const share = (millivolts - bracket.lowMillivolts) / (bracket.highMillivolts - bracket.lowMillivolts);
  let celsius = low + share * (high - low);
  for (let step = 0; step < maximumSteps; step++) {
    const excess = pieceMillivolts(bracket.piece, celsius) - millivolts;
    if (excess === 0) return celsius;
    if (excess > 0) high = celsius;
    else low = celsius;
    const newton = celsius - excess / pieceSlope(bracket.piece, celsius);
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    if (Math.abs(next - celsius) < toleranceCelsius) return next;
    celsius = next;
  }
  return celsius;
}

function bracketHolding(brackets: readonly Bracket[], millivolts: number): Bracket {
  let first = 0;
  let last = brackets.length - 1;
  while (first < last) {
    const middle = (first + last) >> 1;
    if (millivolts <= (brackets[middle]?.highMillivolts ?? Number.NaN)) last = middle;
    else first = middle + 1;
  }
  const found = brackets[first];
  if (found === undefined) throw new RangeError(`no stretch holds ${millivolts} mV`);
  return found;
}

/** Minimum of the type B function, where its slope passes through zero near 21 °C. */
function typeBMinimumMillivolts(): number {
  let low = 0;
  let high = typeBLowestCelsius;
  while (high - low > toleranceCelsius) {
    const middle = (low + high) / 2;
    if (emfSlopeMillivoltsPerCelsius('B', middle) < 0) low = middle;
    else high = middle;
  }
  return emfMillivolts('B', low);
}

function cut(piece: DirectPiece, lowestCelsius: number): Bracket[] {
  const from = Math.max(piece.lowCelsius, lowestCelsius);
  const width = (piece.highCelsius - from) / bracketsPerPiece;
  return Array.from({ length: bracketsPerPiece }, (_, index) => {
    const lowCelsius = from + index * width;
    const highCelsius = index === bracketsPerPiece - 1 ? piece.highCelsius : from + (index + 1) * width;
    return {
      piece,
      lowCelsius,
      highCelsius,
      lowMillivolts: pieceMillivolts(piece, lowCelsius),
      highMillivolts: pieceMillivolts(piece, highCelsius),
    };
  });
}

function tableOf(type: ThermocoupleType): InverseTable {
  const { lowCelsius, highCelsius } = functionRange(type);
  const lowestCelsius = type === 'B' ? typeBLowestCelsius : lowCelsius;
  return {
    brackets: directPieces[type].flatMap((piece) => cut(piece, lowestCelsius)),
    lowestMillivolts: type === 'B' ? typeBMinimumMillivolts() : emfMillivolts(type, lowCelsius),
    highestMillivolts: emfMillivolts(type, highCelsius),
  };
}

/** Computed once on loading: it depends on published constants alone. */
const tables: Readonly<Record<ThermocoupleType, InverseTable>> = {
  B: tableOf('B'),
  E: tableOf('E'),
  J: tableOf('J'),
  K: tableOf('K'),
  N: tableOf('N'),
  R: tableOf('R'),
  S: tableOf('S'),
  T: tableOf('T'),
};
