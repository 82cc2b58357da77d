/** A day's curve of carbon monoxide and the stepper run along it. */
import {
  type CurveNews,
  type CurveRules,
  USUAL_CURVE_RULES,
} from '../../../hub/physics/carbon-monoxide/curve.ts';
import {
  type ExposureConfig,
  startExposure,
  stepExposure,
} from '../../../hub/physics/carbon-monoxide/exposure.ts';
import { readExposure } from '../../../hub/physics/carbon-monoxide/exposure-reading.ts';
import { limitProfile, type ProfileId } from '../../../hub/physics/carbon-monoxide/limits.ts';

export const START = 1_700_000_000_000;
export const minutes = (count: number): number => count * 60_000;
export const at = (minute: number, ppm: number) => ({ atMs: START + minutes(minute), ppm });

/** One reading every `everySeconds` of a level that depends on the minute. */
export function readings(
  fromMinute: number,
  toMinute: number,
  ppm: (minute: number) => number,
  everySeconds = 10,
) {
  const count = Math.round(((toMinute - fromMinute) * 60) / everySeconds) + 1;
  return Array.from({ length: count }, (_, i) => {
    const minute = fromMinute + (i * everySeconds) / 60;
    return at(minute, ppm(minute));
  });
}

export function config(id: ProfileId, rules: Partial<CurveRules> = {}): ExposureConfig {
  return { profile: limitProfile(id), rules: { ...USUAL_CURVE_RULES, ...rules } };
}

export function follow(used: ExposureConfig, news: readonly CurveNews[]) {
  return news.reduce((state, next) => stepExposure(used, state, next), startExposure(START));
}

/** What the exposure says at the end of the news. */
export const read = (used: ExposureConfig, news: readonly CurveNews[]) =>
  readExposure(used, follow(used, news));
export const standingOf = (reading: ReturnType<typeof read>, kind: string) =>
  reading.limits.find((limit) => limit.kind === kind)?.standing;
