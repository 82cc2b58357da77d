import type { Params } from '../alarm.ts';
import type { AirAlarmKind } from './en-air-alarms.ts';

/**
 * What to check and do about air, in order: the common cautious core of what agencies advise. Leave first, call,
 * stay out. Every list defers to the certified alarm, the local code and a licensed fitter.
 */

export const DEFER =
  'This screen is an aid: the certified CO alarm, the local code and a licensed fitter come before it.';

const OUT_NOW = [
  'Everyone out of the building, now.',
  'Gas off only if the valve is on the way out.',
  'Call the emergency services from outside. Count heads.',
  'Stay out until the responders let you in.',
  'Have everyone who was inside seen by a doctor; say "carbon monoxide".',
  'No restart until a licensed fitter has found the cause.',
  DEFER,
];

const NOBODY_IN = [
  ...OUT_NOW.slice(0, 3),
  'Nobody goes in for anybody: rescuers without breathing gear have died of it.',
  ...OUT_NOW.slice(3),
];

const FRESH_AIR = [
  'Everyone out to fresh air.',
  'Gas off only if the valve is on the way out.',
  'Headache, dizziness or sickness: call the emergency services.',
  'Stay out while the reading is above the limit or missing.',
  'Have a licensed fitter find the cause before the next firing.',
  DEFER,
];

const ENOUGH_FOR_TODAY = [
  'End the work in this air for today: what was breathed in counts, also when the level falls now.',
  'Headache, dizziness or sickness: out, and call the emergency services.',
  'Before the next firing: better ventilation, or less gas.',
  DEFER,
];

const BLOOD = [
  'Everyone out to fresh air. Rest; do not work hard.',
  'Headache, dizziness or sickness: call the emergency services; say "carbon monoxide".',
  'The estimate is for a typical adult: the unborn, the ill and children are not in it.',
  'It may only warn earlier. A low estimate never says that someone is well.',
  DEFER,
];

const OTHER_GAS_OUT = [
  'Everyone out to fresh air, now.',
  'Gas off only if the valve is on the way out.',
  'Call the emergency services if anyone feels ill.',
  'Stay out until the room has been aired and measured.',
  DEFER,
];

const CARBON_DIOXIDE = [
  'The air is not being changed: open doors, run the extraction.',
  'Headache or short of breath: out to fresh air.',
  'Where carbon dioxide gathers, carbon monoxide may too: look at its reading.',
  DEFER,
];

const HIGH_OXYGEN = [
  'Everything burns faster: no flame, no sparks. Everyone out.',
  'Is an oxygen cylinder or hose leaking? Close it only if it is on the way out.',
  'Air the room; have the leak found before any flame is lit.',
  DEFER,
];

const OTHER_SOURCE = [
  'Everyone out to fresh air while the level rises.',
  'Do not hunt for the source in rising gas.',
  'Think of a heater, an engine running near a door, a smouldering fire, a flue next door.',
  'Have it found by someone competent before the next firing.',
  DEFER,
];

const DISAGREE = [
  'Act by the higher reading.',
  'Is one sensor in the fumes of the mouth, in a draught, or covered?',
  'Have both checked with test gas. Never make carbon monoxide for a test.',
  DEFER,
];

const FLAT = [
  'Take this sensor for dead: its place is not watched.',
  'Check power, plug, inlet and filter; have it checked with test gas.',
  'Never make carbon monoxide for a test.',
  DEFER,
];

const OVERDUE = [
  'Do not rely on it: an old cell reads low or nothing.',
  'Have it calibrated or replaced, and enter the new date in the set-up.',
  DEFER,
];

const SATURATED = [
  ...OUT_NOW.slice(0, 5),
  'If it is the sensor alone: it is not watching. Have it replaced before the next firing.',
  DEFER,
];

const GUIDANCE: Readonly<Record<AirAlarmKind, readonly string[]>> = {
  'unsafe-air-idlh': NOBODY_IN,
  'unsafe-air-second': OUT_NOW,
  'unsafe-air-ceiling': OUT_NOW,
  'unsafe-air-saturated': SATURATED,
  'unsafe-air-dose': OUT_NOW,
  'unsafe-air-short-mean': OUT_NOW,
  'unsafe-air-low-oxygen': OTHER_GAS_OUT,
  'unsafe-air-carbon-dioxide-second': OTHER_GAS_OUT,
  'unsafe-air-first': FRESH_AIR,
  'unsafe-air-blood': BLOOD,
  'unsafe-air-day-mean': ENOUGH_FOR_TODAY,
  'unsafe-air-carbon-dioxide-first': CARBON_DIOXIDE,
  'unsafe-air-high-oxygen': HIGH_OXYGEN,
  'air-other-source': OTHER_SOURCE,
  'air-sensors-disagree': DISAGREE,
  'air-sensor-flat': FLAT,
  'air-sensor-overdue': OVERDUE,
};

/** Every air alarm's steps, as the table of guidance takes them. */
export const AIR_GUIDANCE = Object.fromEntries(
  Object.entries(GUIDANCE).map(([kind, steps]) => [kind, () => steps]),
) as unknown as Readonly<Record<AirAlarmKind, (params: Params) => readonly string[]>>;
