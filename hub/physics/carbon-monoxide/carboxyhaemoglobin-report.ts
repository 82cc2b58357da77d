/**
 * Carboxyhaemoglobin over time, linear and nonlinear, for one work rate: what
 * the route `carbon-monoxide/carboxyhaemoglobin` answers.
 *
 * An estimate for a typical adult, not a medical statement; it may only make a
 * warning earlier.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import {
  cohbEquilibriumPercent,
  cohbPercentAfter,
  linearCohbPercentAfter,
  linearEquilibriumPercent,
  linearTimeConstantMinutes,
} from './carboxyhaemoglobin.ts';
import {
  type CohbConstants,
  cohbConstants,
  NON_SMOKER_PERCENT,
  type WorkRate,
} from './carboxyhaemoglobin-constants.ts';
import {
  afterNews,
  type CurveNews,
  type CurveRules,
  type PpmSample,
  requireCurveRules,
  requireNews,
  startCurve,
  stretchesUntil,
  USUAL_CURVE_RULES,
} from './curve.ts';

export interface CohbQuestion {
  /** 0 to 99.9 %; 0.75 % where left out. */
  readonly startPercent?: number;
  /** Heavy where left out. */
  readonly workRate?: WorkRate;
  readonly constants?: Partial<CohbConstants>;
  /** Either a curve (in order of time, ended by `endMs` where given) or one level for a time. */
  readonly exposure:
    | {
        readonly kind: 'samples';
        readonly samples: readonly PpmSample[];
        readonly endMs?: number;
        readonly rules?: Partial<CurveRules>;
      }
    | { readonly kind: 'constant'; readonly ppm: number; readonly minutes: number };
}

export interface CohbPoint {
  readonly minutes: number;
  /** The level from here on as far as known. */
  readonly ppm: number;
  readonly nonlinearPercent: number;
  /** May pass 100 where the linear form has lost all meaning. */
  readonly linearPercent: number;
}

export interface CohbReport {
  readonly constants: CohbConstants;
  readonly points: readonly CohbPoint[];
  readonly last: CohbPoint;
  readonly highestPercent: number;
  /** Of the last level. */
  readonly equilibriumPercent: number;
  readonly linearEquilibriumPercent: number;
  readonly linearHalfLifeMinutes: number;
  /** Minutes in which an assumed level stood for a measured one. */
  readonly gapMinutes: number;
}

const CONSTANT_POINTS = 60;
const MINUTE_MS = 60_000;

/**
 * Follows the blood along a curve or a constant level.
 *
 * @throws PhysicsError `bad-input` without samples or for time that runs back, `out-of-range`
 */
export function cohbReport(question: CohbQuestion): CohbReport {
  const { startPercent = NON_SMOKER_PERCENT, workRate = 'heavy', constants: overrides, exposure } = question;
  const constants = cohbConstants(workRate, overrides);
  requireRange('Carboxyhaemoglobin at the start', startPercent, 0, 99.9, '%');
  const { news, rules } = newsOf(exposure);
  const { points, gapMinutes, last } = follow(constants, startPercent, news, rules);
  return {
    constants,
    points,
    last,
    highestPercent: points.reduce((high, point) => Math.max(high, point.nonlinearPercent), 0),
    equilibriumPercent: cohbEquilibriumPercent(constants, last.ppm),
    linearEquilibriumPercent: linearEquilibriumPercent(constants, last.ppm),
    linearHalfLifeMinutes: Math.LN2 * linearTimeConstantMinutes(constants),
    gapMinutes,
  };
}

/** The exposure as news to follow. A constant level is what the caller states, so none of it is a gap. */
function newsOf(exposure: CohbQuestion['exposure']): { news: CurveNews[]; rules: CurveRules } {
  if (exposure.kind === 'constant') {
    const { ppm, minutes } = exposure;
    requireRange('Time', minutes, 0, 1e6, 'min');
    requireRange('Carbon monoxide', ppm, 0, 1e6, 'ppm');
    const everyMs = (minutes * MINUTE_MS) / CONSTANT_POINTS;
    const news = Array.from({ length: CONSTANT_POINTS + 1 }, (_, i) => ({ atMs: i * everyMs, ppm }));
    return { news, rules: { ...USUAL_CURVE_RULES, longestHoldMs: Number.MAX_VALUE } };
  }
  const rules = requireCurveRules({ ...USUAL_CURVE_RULES, ...exposure.rules });
  const end = exposure.endMs === undefined ? [] : [{ atMs: exposure.endMs, ppm: null }];
  return { news: [...exposure.samples, ...end], rules };
}

function follow(
  constants: CohbConstants,
  startPercent: number,
  news: readonly CurveNews[],
  rules: CurveRules,
) {
  const first = news[0];
  if (first === undefined || first.ppm === null) {
    throw new PhysicsError('bad-input', 'a curve needs at least one sample');
  }
  let curve = startCurve(first.atMs);
  let last: CohbPoint = {
    minutes: 0,
    ppm: Math.max(0, first.ppm),
    nonlinearPercent: startPercent,
    linearPercent: startPercent,
  };
  const points: CohbPoint[] = [];
  let gapMinutes = 0;
  for (const item of news) {
    requireNews(curve, item);
    for (const stretch of stretchesUntil(curve, item, rules)) {
      const minutes = (stretch.toMs - stretch.fromMs) / MINUTE_MS;
      last = pointAfter(constants, last, stretch.ppm ?? last.ppm, minutes);
      if (!stretch.measured) gapMinutes += minutes;
    }
    curve = afterNews(curve, item);
    last = { ...last, minutes: (item.atMs - first.atMs) / MINUTE_MS, ppm: curve.last?.ppm ?? last.ppm };
    points.push(last);
  }
  return { points, gapMinutes, last };
}

function pointAfter(constants: CohbConstants, point: CohbPoint, ppm: number, minutes: number): CohbPoint {
  const from = { ppm, minutes };
  const nonlinear = cohbPercentAfter(constants, { ...from, startPercent: point.nonlinearPercent });
  // The linear form knows no roof: past 100 % it is carried on by its own formula, not by the guarded function.
  const tau = linearTimeConstantMinutes(constants);
  const end = linearEquilibriumPercent(constants, ppm);
  const linear =
    point.linearPercent <= 99.9
      ? linearCohbPercentAfter(constants, { ...from, startPercent: point.linearPercent })
      : end + (point.linearPercent - end) * Math.exp(-minutes / tau);
  return { minutes: point.minutes + minutes, ppm, nonlinearPercent: nonlinear, linearPercent: linear };
}
