import type { AlarmKind, Params } from '../alarm.ts';
import type { DisplayUnit } from '../schedule.ts';
import { AIR_MESSAGES, AIR_TITLES } from './en-air-alarms.ts';
import { GAS_MESSAGES, GAS_TITLES } from './en-gas-alarms.ts';
import { guidanceFor } from './en-guidance.ts';
import { notifyFailedWords } from './en-notify.ts';
import { probeCause, probeMessage, probeTitle } from './en-probe.ts';
import { difference, duration, elapsed, numberOf, rate, temperature, textOf } from './format.ts';
import type { AlarmWords } from './types.ts';

/** Titles and messages of the alarms. An alarm tells what was measured, against which limit. */

const TITLES: Readonly<Record<AlarmKind, (params: Params) => string>> = {
  'not-watching-channel': (params) =>
    `Not watching: ${textOf(params, 'label', textOf(params, 'channel', 'a channel'))}`,
  'not-watching-node': (params) =>
    `Not watching: ${textOf(params, 'label', textOf(params, 'node', 'a node'))} is offline`,
  'not-watching-air': () => 'Not watching the air',
  ...AIR_TITLES,
  ...GAS_TITLES,
  'probe-fault': probeTitle,
  overshoot: () => 'Overshoot',
  'overshoot-ahead': () => 'Overshoot ahead',
  'soak-stalled': () => 'Soak stalled',
  'ramp-stalled': () => 'Ramp stalled',
  'notify-failed': notifyFailedWords.title,
};

function blindMessage(params: Params): string {
  const age = numberOf(params, 'ageSeconds');
  const last = age === null ? 'no reading yet' : `last good reading ${elapsed(age)} ago`;
  const furnace = textOf(params, 'furnaceName', '');
  const value = textOf(params, 'lastText', '');
  return [furnace === '' ? '' : `${furnace}: `, last, value === '' ? '' : ` (${value})`].join('');
}

function airBlindMessage(params: Params): string {
  const age = numberOf(params, 'ageSeconds');
  const furnace = textOf(params, 'furnaceName', 'A furnace');
  if (params.channels === 0) return `${furnace} is at work and no carbon monoxide channel is set up`;
  const last = age === null ? 'none so far' : `the last ${elapsed(age)} ago`;
  return `${furnace} is at work without a fresh carbon monoxide reading (${last})`;
}

function lastCelsius(params: Params, unit: DisplayUnit): Params {
  const celsius = numberOf(params, 'lastCelsius');
  return celsius === null ? params : { ...params, lastText: temperature(celsius, unit) };
}

function measuredAt(params: Params, unit: DisplayUnit): string {
  const furnace = textOf(params, 'furnaceName', 'Furnace');
  return `${furnace}: ${temperature(numberOf(params, 'measuredCelsius'), unit)}`;
}

function overshootMessage(params: Params, unit: DisplayUnit): string {
  const measured = numberOf(params, 'measuredCelsius');
  const limit = numberOf(params, 'limitCelsius');
  const over = measured === null || limit === null ? null : Math.max(0, measured - limit);
  const above = `${difference(over, unit)} above the upper limit of ${temperature(limit, unit)}`;
  return `${measuredAt(params, unit)}, ${above}`;
}

function aheadMessage(params: Params, unit: DisplayUnit): string {
  const seconds = numberOf(params, 'secondsAhead');
  const when = seconds === null ? 'soon' : `in ${duration(seconds)}`;
  const limit = temperature(numberOf(params, 'limitCelsius'), unit);
  return `${measuredAt(params, unit)}, at this rate past ${limit} ${when}`;
}

function soakMessage(params: Params, unit: DisplayUnit): string {
  const time = elapsed(numberOf(params, 'stalledSeconds'));
  return `${measuredAt(params, unit)}, outside tolerance: the soak clock has not counted for ${time}`;
}

function rampMessage(params: Params, unit: DisplayUnit): string {
  const target = temperature(numberOf(params, 'targetCelsius'), unit);
  const time = elapsed(numberOf(params, 'stalledSeconds'));
  const now = rate(numberOf(params, 'rateCelsiusPerHour'), unit);
  return `${measuredAt(params, unit)}, no nearer to ${target} for ${time} (now ${now})`;
}

type Message = (params: Params, unit: DisplayUnit) => string;

const MESSAGES: Readonly<Record<AlarmKind, Message>> = {
  'not-watching-channel': (params, unit) => `${blindMessage(lastCelsius(params, unit))}${probeCause(params)}`,
  'not-watching-node': (params, unit) => blindMessage(lastCelsius(params, unit)),
  'not-watching-air': airBlindMessage,
  ...AIR_MESSAGES,
  ...GAS_MESSAGES,
  'probe-fault': probeMessage,
  overshoot: overshootMessage,
  'overshoot-ahead': aheadMessage,
  'soak-stalled': soakMessage,
  'ramp-stalled': rampMessage,
  'notify-failed': notifyFailedWords.message,
};

/** Title, message and guidance of an alarm or a finding. */
export function alarmWords(kind: AlarmKind, params: Params, unit: DisplayUnit): AlarmWords {
  return {
    title: TITLES[kind](params),
    message: MESSAGES[kind](params, unit),
    guidance: guidanceFor(kind, params),
  };
}
