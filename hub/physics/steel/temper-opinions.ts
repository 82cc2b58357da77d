/** What each way of predicting says of one temper, kept from contradicting physics at the joins. */
import { type Composition, outsideOf, percentOf } from './composition.ts';
import {
  MAYNIER,
  MAYNIER_RANGE,
  TEMPERING_J_PER_MOL,
  temperedMartensiteHv,
  timeTemperatureKelvin,
} from './creusot-loire.ts';
import { type Estimate, estimate, type Flag, flag } from './estimate.ts';
import { describeOutside } from './formula.ts';
import { hvToHrc } from './hardness-scale.ts';
import { hollomonJaffeConstant } from './hollomon-jaffe.ts';
import { interpolate } from './interpolate.ts';
import { equivalentHoursAtPeak, peakCelsius, type TemperHistory, temperParameter } from './temper-history.ts';
import {
  MASTER_FROM,
  MASTER_RANGE,
  masterCurveHrc,
  REGRESSION_FROM,
  REGRESSION_RANGE,
  REGRESSION_REACH,
  regressionHrc,
} from './temper-models.ts';
import { type TemperSet, temperCurve } from './temper-set.ts';

/** No laboratory agrees with another closer than this, HRC. */
const LEAST_BAND_HRC = 2;
/** Twice the rms by which the master curves miss the 1080 of another laboratory, HRC. */
const MASTER_BAND_HRC = 3.2;
/** Holds 97 % of the fitted pairs and 90 % of the pairs of a steel left out of the fit, HRC. */
const REGRESSION_BAND_HRC = 5;
/** Added for each element used beyond the fit, HRC. */
const REACH_HRC = 2;
/** Meets chromium and molybdenum steels at 480 °C and above to 2 to 4 HRC rms, vanadium steel to 8.5, HRC. */
const MAYNIER_BAND_HRC = 8;
/** The rule for C has a floor of carbon range; cast-iron carbons never get here. */
const MAX_RULE_CARBON = 1.6;

/** Parameter over 1000 by the rule for this carbon. */
function ruleX(composition: Composition, history: TemperHistory): number {
  return temperParameter(history, hollomonJaffeConstant(Math.min(composition.C, MAX_RULE_CARBON))) / 1000;
}

function hrcEstimate(
  value: number,
  band: number,
  formula: string,
  parts: Pick<Estimate, 'standing' | 'source'>,
  flags: Flag[],
): Estimate {
  return estimate({
    value,
    low: value - band,
    high: value + band,
    unit: 'HRC',
    formula,
    from: { standing: parts.standing, source: parts.source },
    flags,
  });
}

/** The regression over all measured sets, or null beyond its reach. */
export function byRegression(composition: Composition, history: TemperHistory): Estimate | null {
  if (outsideOf(composition, REGRESSION_REACH).length > 0) return null;
  const outside = outsideOf(composition, REGRESSION_RANGE);
  const flags =
    outside.length > 0
      ? [flag('beyond-fitted-steels', `Not among the steels measured: ${describeOutside(outside)}`)]
      : [];
  const value = regressionHrc(composition, ruleX(composition, history));
  const band = REGRESSION_BAND_HRC + REACH_HRC * outside.length;
  return hrcEstimate(value, band, 'regression over measured sets', REGRESSION_FROM, flags);
}

/** Master curves of plain carbon steel, or null for any other steel. */
export function byMasterCurves(composition: Composition, history: TemperHistory): Estimate | null {
  if (outsideOf(composition, MASTER_RANGE).length > 0) return null;
  const value = masterCurveHrc(composition.C, ruleX(composition, history));
  if (value === null) return null;
  return hrcEstimate(value, MASTER_BAND_HRC, 'Hollomon-Jaffe master curves', MASTER_FROM, []);
}

/** A measured curve of the grade. */
export function byMeasuredSet(
  set: TemperSet,
  composition: Composition,
  history: TemperHistory,
): Estimate | null {
  const curve = temperCurve(set);
  const parameter = temperParameter(history, curve.constant);
  const inside = interpolate(curve.points, parameter);
  const band = Math.max(LEAST_BAND_HRC, 2 * curve.scatterHrc);
  const flags = setFlags(set);
  if (inside !== null) return hrcEstimate(inside, band, set.title, set.from, flags);
  const beyond = beyondSet(curve.points, parameter, byRegression(composition, history)?.value ?? null);
  if (beyond === null) return null;
  flags.push(flag('beyond-measured-temper', 'Lighter or stronger than any temper of the measured curve'));
  return hrcEstimate(beyond, band + REACH_HRC, set.title, set.from, flags);
}

/**
 * Off the ends of a measured curve the regression may speak, but never so that
 * more tempering gives more hardness: before the first point no softer than it,
 * after the last point no harder than it.
 */
function beyondSet(
  points: readonly (readonly [number, number])[],
  parameter: number,
  other: number | null,
): number | null {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return null;
  if (parameter < first[0]) return Math.max(first[1], other ?? first[1]);
  return other === null ? null : Math.min(last[1], other);
}

function setFlags(set: TemperSet): Flag[] {
  const flags: Flag[] = [];
  if (!set.timeStated) flags.push(flag('time-not-stated', 'The source states no time; 1.5 h was assumed'));
  if (set.secondaryHardening) {
    flags.push(
      flag(
        'secondary-hardening',
        'This steel hardens again near 500 °C; time and temperature trade only roughly',
      ),
    );
  }
  return flags;
}

/** Less chromium and molybdenum than this is plain carbon steel, which Maynier reads 10 to 15 HRC too hard. */
const MAYNIER_LEAST_ALLOY = 0.5;

/** Maynier 1978 for alloy steel inside its composition limits and from 480 °C; null elsewhere. */
export function byMaynier(composition: Composition, history: TemperHistory): Estimate | null {
  if (outsideOf(composition, MAYNIER_RANGE).length > 0) return null;
  if (percentOf(composition, 'Cr') + percentOf(composition, 'Mo') < MAYNIER_LEAST_ALLOY) return null;
  const peak = peakCelsius(history);
  if (peak < 480) return null;
  const hours = equivalentHoursAtPeak(history, hollomonJaffeConstant(composition.C));
  const hv = temperedMartensiteHv(composition, timeTemperatureKelvin(peak, hours, TEMPERING_J_PER_MOL));
  const reading = hvToHrc(hv);
  if (reading.outcome !== 'converted') return null;
  return hrcEstimate(reading.value, MAYNIER_BAND_HRC, 'Maynier 1978 tempered martensite', MAYNIER, []);
}
