/**
 * A dose gate: warns about a curve of carbon monoxide where an alarm of a
 * standard would have to, and never earlier than that standard lets one.
 *
 * Each test level of the standard gets a time to warn inside its window; levels
 * between follow a straight line of log time on log level. The share of that
 * time which each moment uses up is added; at 1 the gate warns. In clean air the
 * dose falls as slowly as blood clears. The gate may only warn earlier than the
 * workplace limits do; that it is quiet means nothing.
 */
import {
  afterNews,
  type CurveNews,
  type CurveRules,
  type CurveState,
  requireNews,
  startCurve,
  stretchesUntil,
} from './curve.ts';
import { type AlarmStandard, type ResponseWindow, responseWindows } from './response-windows.ts';

/**
 * How far into a window the gate warns: 1.3 times the earliest time, so that a sensor that reads a tenth
 * high still keeps the must-not row; two thirds of the latest where there is no earliest. Derived here.
 */
const AFTER_EARLIEST = 1.3;
const BEFORE_LATEST = 2 / 3;

/**
 * At and below this no dose is taken up: the must-not level of 30 ppm with the 3 ppm that a test gas or
 * sensor may be off. Tolerance from memory: UL 2034; EN 50291-1 test gas of 33 ppm.
 */
const QUIET_PPM = 33;

/** Half-life of the dose in clean air, minutes: the 320 min regulators use for blood (MIOSHA calculator). */
const RECOVERY_MINUTES = 320;

/** A dose of 1 within rounding. */
const FULL_DOSE = 1 - 1e-9;

interface Rung {
  readonly ppm: number;
  readonly minutes: number;
}

function rungsOf(windows: readonly ResponseWindow[]): Rung[] {
  return windows.flatMap(({ ppm, notBeforeMinutes, byMinutes }) => {
    if (byMinutes === null) return [];
    const minutes = notBeforeMinutes > 0 ? notBeforeMinutes * AFTER_EARLIEST : byMinutes * BEFORE_LATEST;
    return [{ ppm, minutes }];
  });
}

/**
 * Minutes at a constant level until the gate warns; infinite at and below 33 ppm.
 *
 * @param ppm 0 or more
 */
export function minutesToWarn(standard: AlarmStandard, ppm: number): number {
  if (ppm <= QUIET_PPM) return Number.POSITIVE_INFINITY;
  const rungs = rungsOf(responseWindows(standard).windows);
  const above = rungs.findIndex((rung) => rung.ppm >= ppm);
  // Beyond the ends the outermost line runs on: shorter above the top row, longer below the lowest.
  const upper = above === -1 ? rungs.length - 1 : Math.max(1, above);
  const [low, high] = [rungs[upper - 1], rungs[upper]];
  if (low === undefined || high === undefined) return 0;
  const slope = Math.log(high.minutes / low.minutes) / Math.log(high.ppm / low.ppm);
  return low.minutes * (ppm / low.ppm) ** slope;
}

export interface DoseGateConfig {
  readonly standard: AlarmStandard;
  readonly rules: CurveRules;
}

export interface DoseGateState {
  readonly curve: CurveState;
  /** 0 to 1; held at 1, so that the gate lets go as soon as the level does. */
  readonly dose: number;
  /** Epoch ms at which the dose first became full, null while it never was. */
  readonly firstWarnMs: number | null;
}

export function startDoseGate(startMs: number): DoseGateState {
  return { curve: startCurve(startMs), dose: 0, firstWarnMs: null };
}

/**
 * The next state: a reading, or (`ppm` null) time that passed without one. Pure.
 *
 * In a gap that the rules leave unknown the last level goes on: silence is no clean air.
 *
 * @throws PhysicsError `bad-input` when time runs back, `out-of-range` for a level outside -1000 to 1e6 ppm
 */
export function stepDoseGate(config: DoseGateConfig, state: DoseGateState, news: CurveNews): DoseGateState {
  requireNews(state.curve, news);
  let { dose, firstWarnMs } = state;
  for (const { fromMs, toMs, ppm: filled } of stretchesUntil(state.curve, news, config.rules)) {
    const warnMinutes = minutesToWarn(config.standard, filled ?? state.curve.last?.ppm ?? 0);
    const minutes = (toMs - fromMs) / 60_000;
    if (firstWarnMs === null && dose + minutes / warnMinutes >= FULL_DOSE) {
      firstWarnMs = Math.min(toMs, fromMs + (1 - dose) * warnMinutes * 60_000);
    }
    dose = Number.isFinite(warnMinutes)
      ? Math.min(1, dose + minutes / warnMinutes)
      : dose * 0.5 ** (minutes / RECOVERY_MINUTES);
  }
  return { curve: afterNews(state.curve, news), dose, firstWarnMs };
}

/** Whether the gate warns at the instant the state stands at. */
export function doseGateWarns(state: DoseGateState): boolean {
  return state.dose >= FULL_DOSE;
}
