import { ALARM_DEFINITIONS, deadbandOf } from '../alarms/definitions.ts';
import type { AlarmKind, Finding } from '../contract/alarm.ts';
import { aboveLimit, type ConditionState, QUIET, stepCondition } from '../judging/condition.ts';
import {
  type CohbCourseConfig,
  cohbRange,
  startCohbCourse,
  stepCohbCourse,
} from '../physics/carbon-monoxide/carboxyhaemoglobin-course.ts';
import type { CurveRules } from '../physics/carbon-monoxide/curve.ts';
import { doseGateWarns, startDoseGate, stepDoseGate } from '../physics/carbon-monoxide/dose-gate.ts';
import { type ExposureConfig, startExposure, stepExposure } from '../physics/carbon-monoxide/exposure.ts';
import {
  type ExposureReading,
  type LimitReading,
  readExposure,
} from '../physics/carbon-monoxide/exposure-reading.ts';
import type { LimitKind } from '../physics/carbon-monoxide/limits.ts';
import type { AirCell } from './cell.ts';
import type { DayChannel, DayConfig, DoseState } from './day-types.ts';

/**
 * What adds up at one carbon monoxide sensor: means by the shop's profile of limits, the dose gates of two alarm
 * standards, and an estimate of carboxyhaemoglobin. A gap is never taken for clean air: the last level goes on, and
 * what is shown says how much of it was measured. The estimate can only raise an alarm, never end one that the
 * limits hold.
 */

/**
 * The lower of two biological limits at the end of a shift: ACGIH BEI 3.5 % (from memory), German BGW 5 % (TRGS 903).
 */
export const BLOOD_LIMIT_PERCENT = 3.5;

/** A reading counts until it is old; what is then left is a gap, filled with the last level. */
export function dayRules({ staleAfterSeconds }: Pick<DayChannel, 'staleAfterSeconds'>): CurveRules {
  return { longestHoldMs: staleAfterSeconds * 1000, gap: { kind: 'hold' } };
}

/** Nothing has added up yet. `at`: epoch ms. */
export function startDose(at: number): DoseState {
  return {
    exposure: startExposure(at),
    cohb: startCohbCourse(at),
    en: startDoseGate(at),
    ul: startDoseGate(at),
    shortMean: QUIET,
    dayMean: QUIET,
    dose: QUIET,
    blood: QUIET,
  };
}

/** The next state: one cell of ten seconds. Pure. */
export function stepDose(config: DayConfig, channel: DayChannel, old: DoseState, cell: AirCell): DoseState {
  const rules = dayRules(channel);
  const exposures: ExposureConfig = { profile: config.profile, rules };
  const courses: CohbCourseConfig = { ...config.blood, rules };
  const value = cell.values[channel.id];
  const news = [
    ...(value === undefined ? [] : [{ atMs: cell.from, ppm: value.mean }]),
    { atMs: cell.to, ppm: null },
  ];
  let { exposure, cohb, en, ul } = old;
  for (const each of news) {
    exposure = stepExposure(exposures, exposure, each);
    cohb = stepCohbCourse(courses, cohb, each);
    en = stepDoseGate({ standard: 'en-50291-1', rules }, en, each);
    ul = stepDoseGate({ standard: 'ul-2034', rules }, ul, each);
  }
  const reading = readExposure(exposures, exposure);
  const { high } = cohbRange(cohb.band);
  return {
    exposure,
    cohb,
    en,
    ul,
    shortMean: stepMean('unsafe-air-short-mean', old.shortMean, reading, 'stel'),
    dayMean: stepMean('unsafe-air-day-mean', old.dayMean, reading, 'twa'),
    dose: condition('unsafe-air-dose', old.dose, doseGateWarns(en) || doseGateWarns(ul), cell.to),
    blood: condition('unsafe-air-blood', old.blood, isBloodHigh(old.blood, high), cell.to),
  };
}

function condition(kind: AlarmKind, old: ConditionState, active: boolean | null, at: number): ConditionState {
  return stepCondition(old, { active, at }, ALARM_DEFINITIONS[kind]);
}

function isBloodHigh(old: ConditionState, percent: number): boolean {
  const deadband = deadbandOf('unsafe-air-blood', BLOOD_LIMIT_PERCENT, null);
  return aboveLimit(old.raised, percent, BLOOD_LIMIT_PERCENT, deadband);
}

function stepMean(
  kind: AlarmKind,
  old: ConditionState,
  reading: ExposureReading,
  which: LimitKind,
): ConditionState {
  const found = reading.limits.find((each) => each.kind === which);
  if (found === undefined) return QUIET;
  // Lungs know no shifts: eight hours that end now count as a day, wherever the shop's own day began.
  const eight = which === 'twa' ? reading.lastEightHours : null;
  const mean = { ...found, eightPpm: Math.max(eight?.atLeastPpm ?? 0, eight?.ppm ?? 0) };
  return condition(kind, old, isMeanHigh(kind, old, mean), reading.atMs);
}

interface Mean extends LimitReading {
  readonly eightPpm: number;
}

function isMeanHigh(kind: AlarmKind, old: ConditionState, { standing, limit, ppm, eightPpm }: Mean) {
  if (standing === 'above' || eightPpm > limit.ppm) return true;
  if (standing === 'unknown' || ppm === null) return null;
  return aboveLimit(old.raised, Math.max(ppm, eightPpm), limit.ppm, deadbandOf(kind, limit.ppm, null));
}

/** The exposure of one sensor as it stands. */
export function doseReading(config: DayConfig, channel: DayChannel, state: DoseState): ExposureReading {
  return readExposure({ profile: config.profile, rules: dayRules(channel) }, state.exposure);
}

const DOSE_KINDS = [
  'unsafe-air-dose',
  'unsafe-air-short-mean',
  'unsafe-air-blood',
  'unsafe-air-day-mean',
] as const;
type DoseKind = (typeof DOSE_KINDS)[number];

interface Told {
  readonly finding: Finding;
  /** The larger is told where several sensors hold the same. */
  readonly weight: number;
}

/** What holds now: one finding a kind, about the sensor that has it worst, since the first of them had it. */
export function doseFindings(config: DayConfig, doses: Readonly<Record<string, DoseState>>): Finding[] {
  return DOSE_KINDS.flatMap((kind) => {
    const told = config.channels.flatMap((channel) => {
      const state = doses[channel.id];
      return state === undefined ? [] : (toldOf(config, channel, state, kind) ?? []);
    });
    const [worst] = told.sort((a, b) => b.weight - a.weight);
    const since = Math.min(...told.map(({ finding }) => finding.since));
    return worst === undefined ? [] : [{ ...worst.finding, since }];
  });
}

function toldOf(config: DayConfig, channel: DayChannel, state: DoseState, kind: DoseKind): Told | null {
  const held = conditionOf(state, kind);
  if (!held.raised) return null;
  const about = { channel: channel.id, label: channel.label };
  const { params, weight } = paramsOf(kind, doseReading(config, channel, state), state);
  const since = held.since ?? state.exposure.curve.atMs;
  return { finding: { kind, subject: 'shop', since, params: { ...params, ...about } }, weight };
}

function conditionOf(state: DoseState, kind: DoseKind): ConditionState {
  switch (kind) {
    case 'unsafe-air-dose':
      return state.dose;
    case 'unsafe-air-short-mean':
      return state.shortMean;
    case 'unsafe-air-blood':
      return state.blood;
    case 'unsafe-air-day-mean':
      return state.dayMean;
    default:
      throw kind satisfies never;
  }
}

interface Weighed {
  readonly params: Finding['params'];
  readonly weight: number;
}

function paramsOf(kind: DoseKind, reading: ExposureReading, state: DoseState): Weighed {
  switch (kind) {
    case 'unsafe-air-dose': {
      const ppm = state.exposure.curve.last?.ppm ?? null;
      const standard = doseGateWarns(state.en) ? 'en-50291-1' : 'ul-2034';
      return { params: { ppm, standard }, weight: ppm ?? 0 };
    }
    case 'unsafe-air-blood': {
      const { low, high } = cohbRange(state.cohb.band);
      const params = { lowPercent: low, highPercent: high, limitPercent: BLOOD_LIMIT_PERCENT };
      return { params, weight: high };
    }
    case 'unsafe-air-short-mean':
      return meanParams(reading, 'stel', reading.stel.coverage);
    case 'unsafe-air-day-mean':
      return dayParams(reading);
    default:
      throw kind satisfies never;
  }
}

/** The shop's own day or the eight hours that end now, whichever is higher. */
function dayParams(reading: ExposureReading): Weighed {
  const day = meanParams(reading, 'twa', reading.twa.coverage);
  const { ppm, coverage } = reading.lastEightHours;
  if (ppm === null || ppm <= day.weight) return day;
  return { params: { ...day.params, ppm, coverage }, weight: ppm };
}

function meanParams({ limits }: ExposureReading, which: LimitKind, coverage: number): Weighed {
  const found = limits.find((each) => each.kind === which);
  const ppm = found?.ppm ?? null;
  const params = { ppm, limitPpm: found?.limit.ppm ?? null, body: found?.limit.body ?? null, coverage };
  return { params, weight: ppm ?? 0 };
}
