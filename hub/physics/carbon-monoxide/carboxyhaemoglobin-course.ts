/**
 * Carboxyhaemoglobin along a measured curve of carbon monoxide, as a band
 * between light and heavy work.
 *
 * An estimate for a typical adult, not a medical statement. It may only make a
 * warning earlier, so what warns is the top of the band: heavy work while the
 * blood fills, light work while it empties. It never ends or softens a warning.
 */
import { cohbPercentAfter } from './carboxyhaemoglobin.ts';
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
  type CurveState,
  requireNews,
  type Stretch,
  startCurve,
  stretchesUntil,
} from './curve.ts';

export interface CohbCourseConfig {
  /** Heavy unless chosen otherwise; never rest for someone who works. */
  readonly chosen: CohbConstants;
  readonly light: CohbConstants;
  readonly heavy: CohbConstants;
  readonly rules: CurveRules;
}

/** Percent. */
export interface CohbBand {
  readonly chosen: number;
  readonly light: number;
  readonly heavy: number;
}

export interface CohbCourseState {
  readonly curve: CurveState;
  readonly band: CohbBand;
  readonly highest: CohbBand;
  /** Time with a measured level, and time in which an assumed one stood for it, ms. */
  readonly measuredMs: number;
  readonly gapMs: number;
}

/** Constants for a course: overrides go into all three of its members. */
export function cohbCourseConfig(
  rules: CurveRules,
  rate: WorkRate = 'heavy',
  overrides: Partial<CohbConstants> = {},
): CohbCourseConfig {
  return {
    chosen: cohbConstants(rate, overrides),
    light: cohbConstants('light', overrides),
    heavy: cohbConstants('heavy', overrides),
    rules,
  };
}

/** The state before the first reading. `startPercent` 0 to 99.9 %; a smoker begins higher. */
export function startCohbCourse(startMs: number, startPercent = NON_SMOKER_PERCENT): CohbCourseState {
  const band = { chosen: startPercent, light: startPercent, heavy: startPercent };
  return { curve: startCurve(startMs), band, highest: band, measuredMs: 0, gapMs: 0 };
}

/**
 * The next state: a reading, or (`ppm` null) time that passed without one. Pure.
 *
 * Time in a gap counts with the level that the rules put there. Where they put none, the last level stands
 * all the same: blood does not stop when a sensor does.
 *
 * @throws PhysicsError `bad-input` when time runs back, `out-of-range` for a level outside -1000 to 1e6 ppm
 */
export function stepCohbCourse(
  config: CohbCourseConfig,
  state: CohbCourseState,
  news: CurveNews,
): CohbCourseState {
  requireNews(state.curve, news);
  let next = state;
  for (const stretch of stretchesUntil(state.curve, news, config.rules)) {
    next = addStretch(config, next, stretch);
  }
  return { ...next, curve: afterNews(state.curve, news) };
}

function addStretch(config: CohbCourseConfig, state: CohbCourseState, stretch: Stretch): CohbCourseState {
  const ms = stretch.toMs - stretch.fromMs;
  const ppm = stretch.ppm ?? state.curve.last?.ppm ?? null;
  if (ppm === null) return { ...state, gapMs: state.gapMs + ms };
  const minutes = ms / 60_000;
  const after = (who: keyof CohbBand): number =>
    cohbPercentAfter(config[who], { startPercent: state.band[who], ppm, minutes });
  const band = { chosen: after('chosen'), light: after('light'), heavy: after('heavy') };
  return {
    ...state,
    band,
    highest: {
      chosen: Math.max(state.highest.chosen, band.chosen),
      light: Math.max(state.highest.light, band.light),
      heavy: Math.max(state.highest.heavy, band.heavy),
    },
    measuredMs: state.measuredMs + (stretch.measured ? ms : 0),
    gapMs: state.gapMs + (stretch.measured ? 0 : ms),
  };
}

/** Bottom and top of the band, %. The top is what may warn; the bottom is for showing how little is known. */
export function cohbRange(band: CohbBand): { readonly low: number; readonly high: number } {
  const { chosen, light, heavy } = band;
  return { low: Math.min(chosen, light, heavy), high: Math.max(chosen, light, heavy) };
}
