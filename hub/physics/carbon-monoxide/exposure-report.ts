/**
 * A whole curve of carbon monoxide judged at once: what the route
 * `carbon-monoxide/exposure` answers. It is the stepper of exposure.ts run from
 * the first sample to the end, so the two cannot disagree.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { type CurveRules, type PpmSample, requireCurveRules, USUAL_CURVE_RULES } from './curve.ts';
import { type DoseGateState, startDoseGate, stepDoseGate } from './dose-gate.ts';
import { type ExposureConfig, startExposure, stepExposure } from './exposure.ts';
import { type ExposureReading, readExposure } from './exposure-reading.ts';
import {
  type CustomLimits,
  customProfile,
  type LimitProfile,
  limitProfile,
  type ProfileId,
} from './limits.ts';
import { ALARM_STANDARDS, type AlarmStandard } from './response-windows.ts';

/** A week: what one question may cost is bounded, to about half a second. */
const LONGEST_MS = 7 * 86_400_000;

export interface ExposureQuestion {
  /** The strictest where left out. */
  readonly profile?: ProfileId | CustomLimits;
  /** In order of time, one or more. */
  readonly samples: readonly PpmSample[];
  /** When the work began and ended, epoch ms; the first and the last sample where left out. */
  readonly startMs?: number;
  readonly endMs?: number;
  readonly rules?: Partial<CurveRules>;
}

export interface ExposureReport extends ExposureReading {
  readonly profile: LimitProfile;
  readonly startMs: number;
  /** When the dose of each standard for alarms became full, null where it did not. */
  readonly doseWarnings: readonly { readonly standard: AlarmStandard; readonly atMs: number | null }[];
}

/**
 * Judges a curve. A quiet report never says that the air was good.
 *
 * @throws PhysicsError `bad-input` without samples, for time that runs back or an end before the last sample;
 *   `out-of-range` for a level outside -1000 to 1e6 ppm, more than 7 days or rules that mean nothing
 */
export function exposureReport(question: ExposureQuestion): ExposureReport {
  const { samples } = question;
  const [first, last] = [samples[0], samples.at(-1)];
  if (first === undefined || last === undefined) {
    throw new PhysicsError('bad-input', 'an exposure needs at least one sample');
  }
  const profile = profileOf(question.profile ?? 'strictest');
  const rules = requireCurveRules({ ...USUAL_CURVE_RULES, ...question.rules });
  const startMs = question.startMs ?? first.atMs;
  const endMs = question.endMs ?? last.atMs;
  requireRange('Length of the curve', endMs - startMs, 0, LONGEST_MS, 'ms');
  const news = [...samples, { atMs: endMs, ppm: null }];
  const config: ExposureConfig = { profile, rules };
  const state = news.reduce((now, next) => stepExposure(config, now, next), startExposure(startMs));
  const doseWarnings = ALARM_STANDARDS.map((standard) => {
    const step = (now: DoseGateState, next: (typeof news)[number]) =>
      stepDoseGate({ standard, rules }, now, next);
    return { standard, atMs: news.reduce(step, startDoseGate(startMs)).firstWarnMs };
  });
  return { ...readExposure(config, state), profile, startMs, doseWarnings };
}

function profileOf(profile: ProfileId | CustomLimits): LimitProfile {
  return typeof profile === 'string' ? limitProfile(profile) : customProfile(profile);
}
