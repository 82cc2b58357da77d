import type { AirAlarmKind } from './en-air-alarms.ts';
import type { RationaleWords } from './types.ts';

/** Why each alarm about air exists: cause, consequence, and what to do first. */

const POISONED = 'Poisoning; people who are poisoned do not notice it in time.';
const OUT = 'Everyone out of the building, now.';
const FUMES = 'Too little air for what burns, or fumes that do not leave the room.';
const UNWATCHED = 'Carbon monoxide can rise without anyone noticing.';

export const AIR_RATIONALE: Readonly<Record<AirAlarmKind, RationaleWords>> = {
  'unsafe-air-idlh': {
    name: 'Carbon monoxide immediately dangerous to life or health',
    cause: FUMES,
    consequence: 'Collapse within minutes; rescuers are at risk too.',
    action: OUT,
  },
  'unsafe-air-second': {
    name: 'Carbon monoxide above the second limit',
    cause: FUMES,
    consequence: POISONED,
    action: OUT,
  },
  'unsafe-air-ceiling': {
    name: 'Carbon monoxide above the ceiling of the profile',
    cause: FUMES,
    consequence: POISONED,
    action: OUT,
  },
  'unsafe-air-saturated': {
    name: 'Gas sensor at the end of its scale',
    cause: 'More gas than the sensor can tell, or a sensor at fault.',
    consequence: 'The level may be any value above; nobody sees it rise.',
    action: OUT,
  },
  'unsafe-air-dose': {
    name: 'Dose at which an alarm of a standard would have to sound',
    cause: 'A level that is borne for a while and not for longer.',
    consequence: POISONED,
    action: OUT,
  },
  'unsafe-air-short-mean': {
    name: 'Carbon monoxide over 15 minutes above the short-term limit',
    cause: FUMES,
    consequence: POISONED,
    action: OUT,
  },
  'unsafe-air-low-oxygen': {
    name: 'Too little oxygen',
    cause: 'Flames use up the air of the room, or another gas takes its place.',
    consequence: 'Unconsciousness without warning; flames make more carbon monoxide.',
    action: 'Everyone out to fresh air, now.',
  },
  'unsafe-air-carbon-dioxide-second': {
    name: 'Carbon dioxide above the second limit',
    cause: 'The air of the room is not being changed while something burns.',
    consequence: 'Headache, short breath, unconsciousness.',
    action: 'Everyone out to fresh air, now.',
  },
  'unsafe-air-first': {
    name: 'Carbon monoxide above the first limit',
    cause: 'Too little air for what burns, or fumes that gather.',
    consequence: 'Harm to health over the shift; the level may go on rising.',
    action: 'Everyone out to fresh air.',
  },
  'unsafe-air-blood': {
    name: 'Carbon monoxide in the blood, estimated',
    cause: 'Hard work in air that has carbon monoxide in it.',
    consequence: 'Slower thought and grip near hot steel; harm to heart and brain.',
    action: 'Out to fresh air, and rest.',
  },
  'unsafe-air-day-mean': {
    name: 'Carbon monoxide over the day above the limit',
    cause: 'A whole day in air with some carbon monoxide.',
    consequence: 'Harm to health over the years.',
    action: 'End the work in this air for today.',
  },
  'unsafe-air-carbon-dioxide-first': {
    name: 'Carbon dioxide above the first limit',
    cause: 'The air of the room is not being changed while something burns.',
    consequence: 'What burns runs short of air; carbon monoxide follows.',
    action: 'Open doors, run the extraction.',
  },
  'unsafe-air-high-oxygen': {
    name: 'Too much oxygen',
    cause: 'A leak of oxygen.',
    consequence: 'Clothes and grease catch fire from a spark.',
    action: 'No flame, no sparks; everyone out.',
  },
  'air-other-source': {
    name: 'Carbon monoxide rises with no furnace hot',
    cause: 'A heater, an engine, a smouldering fire, a neighbour’s flue.',
    consequence: 'Putting the furnace out will not stop it.',
    action: 'Everyone out to fresh air while it rises.',
  },
  'air-sensors-disagree': {
    name: 'Two CO sensors disagree',
    cause: 'A sensor that has aged, is covered or drifts; or air that does not mix.',
    consequence: 'One of the two is believed wrongly.',
    action: 'Act by the higher reading.',
  },
  'air-sensor-flat': {
    name: 'Gas sensor does not move',
    cause: 'Dead cell, blocked inlet, or a node that repeats itself.',
    consequence: UNWATCHED,
    action: 'Take this sensor for dead.',
  },
  'air-sensor-overdue': {
    name: 'Gas sensor past its date',
    cause: 'Its calibration is due, or its life is over.',
    consequence: UNWATCHED,
    action: 'Have it calibrated or replaced.',
  },
};
