/**
 * Heat content as a rising piecewise-linear function of temperature.
 *
 * The stepper needs temperature from heat content as often as the reverse. A
 * table of straight pieces makes both directions exact inverses of each other,
 * which is what keeps energy conserved across a peak at any step.
 */
import { PhysicsError } from '../errors.ts';

/** Knots lie at every whole degree, so EN's joins at 600, 735 and 900 °C fall on knots. */
const FIRST_CELSIUS = -60;
const LAST_CELSIUS = 1400;

/** A rising function tabulated at whole degrees, straight between them. */
export interface RisingTable {
  /** Value at a temperature in °C; the end pieces are continued beyond the table. */
  at(celsius: number): number;
  /** Slope per K of the piece that holds this temperature. */
  slopeAt(celsius: number): number;
  /**
   * Temperature in °C at which the table has this value.
   *
   * @param nearCelsius where to look first; any guess gives the same answer
   */
  inverse(value: number, nearCelsius: number): number;
}

/**
 * Tabulates a function of temperature at every whole degree.
 *
 * @throws PhysicsError `bad-input` when the function does not rise everywhere
 */
export function risingTable(valueAt: (celsius: number) => number): RisingTable {
  const knots = new Float64Array(LAST_CELSIUS - FIRST_CELSIUS + 1);
  for (let i = 0; i < knots.length; i++) knots[i] = valueAt(FIRST_CELSIUS + i);
  for (let i = 1; i < knots.length; i++) {
    if (knot(knots, i) > knot(knots, i - 1)) continue;
    const celsius = FIRST_CELSIUS + i;
    throw new PhysicsError('bad-input', `heat content does not rise at ${celsius} °C`, { celsius });
  }
  return {
    at: (celsius) => {
      const piece = pieceOf(celsius, knots.length);
      return knot(knots, piece) + rise(knots, piece) * (celsius - FIRST_CELSIUS - piece);
    },
    slopeAt: (celsius) => rise(knots, pieceOf(celsius, knots.length)),
    inverse: (value, nearCelsius) => {
      const piece = pieceHolding(knots, value, pieceOf(nearCelsius, knots.length));
      return FIRST_CELSIUS + piece + (value - knot(knots, piece)) / rise(knots, piece);
    },
  };
}

/** The index is always inside the table; the fallback only satisfies the compiler. */
function knot(knots: Float64Array, index: number): number {
  return knots[index] ?? Number.NaN;
}

function rise(knots: Float64Array, piece: number): number {
  return knot(knots, piece + 1) - knot(knots, piece);
}

function pieceOf(celsius: number, knotCount: number): number {
  return Math.min(knotCount - 2, Math.max(0, Math.floor(celsius - FIRST_CELSIUS)));
}

function pieceHolding(knots: Float64Array, value: number, guess: number): number {
  for (let piece = guess - 1; piece <= guess + 1; piece++) {
    if (value >= knot(knots, piece) && value < knot(knots, piece + 1)) return piece;
  }
  let low = 0;
  let high = knots.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (knot(knots, middle) <= value) low = middle;
    else high = middle;
  }
  return low;
}
