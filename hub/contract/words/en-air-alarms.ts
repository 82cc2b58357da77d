import type { AlarmKind, Params } from '../alarm.ts';
import { elapsed, numberOf, textOf } from './format.ts';

/** Titles and messages of the alarms about air: what was measured, against which limit. */

export type AirAlarmKind = Extract<AlarmKind, `unsafe-air-${string}` | `air-${string}`>;
type Sentence = (params: Params) => string;

export const AIR_TITLES: Readonly<Record<AirAlarmKind, Sentence>> = {
  'unsafe-air-idlh': () => 'Carbon monoxide immediately dangerous to life',
  'unsafe-air-second': () => 'Carbon monoxide above the second limit',
  'unsafe-air-ceiling': () => 'Carbon monoxide above the ceiling',
  'unsafe-air-saturated': () => 'Beyond what the gas sensor can tell',
  'unsafe-air-dose': () => 'Carbon monoxide: dose of an alarm reached',
  'unsafe-air-short-mean': () => 'Carbon monoxide: 15 minutes above the limit',
  'unsafe-air-low-oxygen': () => 'Too little oxygen',
  'unsafe-air-carbon-dioxide-second': () => 'Carbon dioxide above the second limit',
  'unsafe-air-first': () => 'Carbon monoxide above the first limit',
  'unsafe-air-blood': () => 'Carbon monoxide in the blood, estimated',
  'unsafe-air-day-mean': () => 'Carbon monoxide: the day’s limit is passed',
  'unsafe-air-carbon-dioxide-first': () => 'Carbon dioxide above the first limit',
  'unsafe-air-high-oxygen': () => 'Too much oxygen',
  'air-other-source': () => 'Carbon monoxide rises with no furnace hot',
  'air-sensors-disagree': () => 'Two CO sensors disagree',
  'air-sensor-flat': (params) => `Gas sensor does not move: ${where(params)}`,
  'air-sensor-overdue': (params) => `Gas sensor overdue: ${where(params)}`,
};

export const AIR_MESSAGES: Readonly<Record<AirAlarmKind, Sentence>> = {
  'unsafe-air-idlh': level,
  'unsafe-air-second': level,
  'unsafe-air-ceiling': level,
  'unsafe-air-saturated': (params) =>
    `${where(params)} reads its end of scale, ${count(numberOf(params, 'fullScale'))}: the level may be any value above`,
  'unsafe-air-dose': (params) =>
    `${ppm(params, 'ppm')} now at ${where(params)}; by ${standard(params)} an alarm would have to sound`,
  'unsafe-air-short-mean': (params) => mean(params, 'over the last 15 minutes'),
  'unsafe-air-low-oxygen': oxygen,
  'unsafe-air-carbon-dioxide-second': level,
  'unsafe-air-first': level,
  'unsafe-air-blood': (params) =>
    `Estimate for a typical adult: ${share(params, 'lowPercent')} to ${share(params, 'highPercent')}, limit ${share(params, 'limitPercent')}. No medical statement`,
  'unsafe-air-day-mean': (params) => mean(params, 'over the day so far'),
  'unsafe-air-carbon-dioxide-first': level,
  'unsafe-air-high-oxygen': oxygen,
  'air-other-source': (params) =>
    `${ppm(params, 'ppm')} at ${where(params)}, up ${ppm(params, 'risePpm')}, while every furnace is cold`,
  'air-sensors-disagree': (params) =>
    `${ppm(params, 'ppm')} at ${where(params)}, ${ppm(params, 'otherPpm')} at ${textOf(params, 'otherLabel', 'the other')}: take the higher for true`,
  'air-sensor-flat': (params) =>
    `${ppm(params, 'ppm')} without any change for ${time(params)}${flat(params)}`,
  'air-sensor-overdue': overdue,
};

function where(params: Params): string {
  return textOf(params, 'label', textOf(params, 'channel', 'the sensor'));
}

function count(value: number | null): string {
  return value === null ? 'unknown' : String(Math.round(value));
}

function ppm(params: Params, name: string): string {
  const value = numberOf(params, name);
  return value === null ? 'unknown' : `${Math.round(value)} ppm`;
}

function share(params: Params, name: string): string {
  const value = numberOf(params, name);
  return value === null ? 'unknown' : `${value.toFixed(1)} %`;
}

function level(params: Params): string {
  return `${ppm(params, 'ppm')} measured at ${where(params)}, limit ${ppm(params, 'limitPpm')}`;
}

function oxygen(params: Params): string {
  return `${share(params, 'percent')} measured at ${where(params)}, limit ${share(params, 'limitPercent')}`;
}

function mean(params: Params, over: string): string {
  const limit = `limit ${ppm(params, 'limitPpm')} (${textOf(params, 'body', 'the shop')})`;
  const coverage = numberOf(params, 'coverage');
  const seen = coverage === null ? '' : `; ${Math.floor(coverage * 100)} % of the time was measured`;
  return `${ppm(params, 'ppm')} at ${where(params)} ${over}, ${limit}${seen}`;
}

function standard(params: Params): string {
  return textOf(params, 'standard', '') === 'ul-2034' ? 'UL 2034' : 'EN 50291-1';
}

function time(params: Params): string {
  return elapsed(numberOf(params, 'seconds'));
}

function flat(params: Params): string {
  switch (textOf(params, 'why', '')) {
    case 'others-move':
      return ', while another sensor moved';
    case 'used-to-move':
      return ', with a furnace hot; it used to move';
    default:
      return ': real air is never that still';
  }
}

function overdue(params: Params): string {
  const days = numberOf(params, 'days');
  const ago = days === null ? '' : ` for ${Math.floor(days)} days`;
  const what =
    textOf(params, 'what', '') === 'end-of-life' ? 'Past its end of life' : 'Past its calibration date';
  return `${what}${ago}: what it reads may be wrong, and too low`;
}
