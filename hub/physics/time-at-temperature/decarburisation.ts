/**
 * How deep a firing can have decarburised a piece: an upper bound.
 *
 * Semi-infinite austenite whose surface carbon is held at zero:
 * C/C0 = erf(x / (2 sqrt(D t))), with D t integrated over the measured curve.
 * In air the scale eats into the same metal and the real surface carbon is not
 * zero, so the true depth is less.
 */
import { requireRange } from '../errors.ts';
import type { Band } from '../heat/standing.ts';
import {
  type Alloying,
  AUSTENITE_FORMS,
  AUSTENITE_HIGH_CELSIUS,
  AUSTENITE_LOW_CELSIUS,
  alloyFactor,
  austeniteDiffusivity,
} from './carbon-diffusivity.ts';
import { type CurveIntegral, type CurvePoint, integrate } from './curve.ts';

/** Depth over sqrt(D t) at which C/C0 is 0.5, 0.9 and 0.95: twice the inverse error function. */
const HALF = 0.953873;
const NINETY = 2.326175;
const NINETY_FIVE = 2.771808;

export interface DecarburisationQuestion {
  /** Surface temperature of the piece. */
  readonly curve: readonly CurvePoint[];
  /** Carbon of the steel, mass %, 0.1 to 1.4. */
  readonly carbonPercent: number;
  /** Alloying, if known. */
  readonly alloy?: Alloying;
  /** Where austenite begins on heating, °C, 700 to 900. Default 727. */
  readonly ac1Celsius?: number;
}

export type DecarburisationCaution =
  /** Hotter than 1200 °C for a while: nothing is claimed for it, the depth is at least this. */
  | 'above-range'
  /** Between Ac1 and 912 °C a ferrite rim forms, in which carbon runs 10 to 50 times faster. */
  | 'ferrite-rim'
  /** Readings more than 5 minutes apart were bridged by straight lines. */
  | 'long-gap';

export interface Decarburisation {
  /** Depth below which at least this share of the carbon is left, m. */
  readonly depthTo50Metres: Band;
  readonly depthTo90Metres: Band;
  readonly depthTo95Metres: Band;
  /** Integral of D over the counted time, m². */
  readonly dtM2: Band;
  readonly secondsCounted: number;
  /** Time at or below Ac1, s: not counted. */
  readonly secondsBelow: number;
  readonly cautions: readonly DecarburisationCaution[];
}

/**
 * Upper bound of the decarburised depth over a measured curve. The band is the
 * spread of four diffusivities, with and without the alloy factor.
 *
 * @throws PhysicsError `bad-input` for a malformed curve, `out-of-range` for
 *   carbon outside 0.1 to 1.4 %, Ac1 outside 700 to 900 °C, or alloying that
 *   the factor does not cover
 */
export function decarburisedDepth(question: DecarburisationQuestion): Decarburisation {
  const carbon = requireRange('carbon', question.carbonPercent, 0.1, 1.4, '%');
  const ac1 = requireRange('Ac1', question.ac1Celsius ?? AUSTENITE_LOW_CELSIUS, 700, 900, '°C');
  const factor = question.alloy === undefined ? 1 : alloyFactor(question.alloy);
  const range = { low: Math.max(ac1, AUSTENITE_LOW_CELSIUS), high: AUSTENITE_HIGH_CELSIUS };
  const integrals = AUSTENITE_FORMS.map((form) =>
    integrate(question.curve, range, (celsius) => austeniteDiffusivity(form, celsius, carbon)),
  );
  const [tibbetts] = integrals;
  if (tibbetts === undefined) throw new RangeError('there is no diffusivity to integrate');
  const plain = integrals.map((integral) => integral.value);
  const dtM2 = {
    low: Math.min(...plain) * Math.min(1, factor),
    value: tibbetts.value * factor,
    high: Math.max(...plain) * Math.max(1, factor),
  };
  return {
    depthTo50Metres: depth(dtM2, HALF),
    depthTo90Metres: depth(dtM2, NINETY),
    depthTo95Metres: depth(dtM2, NINETY_FIVE),
    dtM2,
    secondsCounted: tibbetts.secondsInRange,
    secondsBelow: tibbetts.secondsBelow,
    cautions: cautionsOf(question.curve, tibbetts, range.low),
  };
}

function depth(dtM2: Band, factor: number): Band {
  const of = (dt: number): number => factor * Math.sqrt(dt);
  return { low: of(dtM2.low), value: of(dtM2.value), high: of(dtM2.high) };
}

function cautionsOf(
  curve: readonly CurvePoint[],
  integral: CurveIntegral,
  ac1: number,
): DecarburisationCaution[] {
  const rim = integrate(curve, { low: ac1, high: 912 }, () => 1).secondsInRange;
  const cautions: DecarburisationCaution[] = [];
  if (integral.secondsAbove > 0) cautions.push('above-range');
  if (rim > 0) cautions.push('ferrite-rim');
  if (integral.longestGapSeconds > 300) cautions.push('long-gap');
  return cautions;
}
