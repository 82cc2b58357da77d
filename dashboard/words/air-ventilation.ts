import type { AirChange } from '../../hub/contract/air.ts';
import type { DECAY_CONDITIONS } from '../../hub/contract/compute/ventilation.ts';

/** Words of the ventilation on the page about the air. */

/** Offered where the shop has not used words of its own yet. */
export const USUAL_TAGS = ['door open', 'fan on'] as const;

export const CONDITION_WORDS: Readonly<Record<(typeof DECAY_CONDITIONS)[number], string>> = {
  'source-off': 'something was still giving off gas',
  'openings-unchanged': 'doors or fans changed',
  'background-steady': 'the air outside changed',
  'above-background': 'too near the background',
  'enough-samples': 'too few readings',
  'enough-fall': 'it fell too little',
  'one-slope': 'it did not fall at one pace',
  mixed: 'the room was not mixed',
};

export const END_WORDS: Readonly<Record<AirChange['end'], string>> = {
  arrived: 'down to the background',
  lit: 'a furnace was lit',
  changed: 'doors or fans changed',
  silent: 'the sensor fell silent',
  long: 'two hours were over',
};

export const ventilationWords = {
  title: 'Ventilation, measured',
  tagsTitle: 'How does the shop stand?',
  tagsHint: 'Press what is so now. Falls of gas are then told apart by it.',
  nobodySaid: 'Nobody has said.',
  allShut: 'All shut',
  saidSince: (tags: string, time: string) => `Said: ${tags}, since ${time}`,
  ownLabel: 'Something else',
  ownHint: 'In your words, such as "big door half open".',
  ownAdd: 'Add',
  tooMany: 'Eight at most: take one off first.',
  changes: 'Air changes an hour',
  changesBand: (percent: string, low: string, high: string) => `${percent} % sure: ${low} to ${high}`,
  measuredAt: (time: string) => `measured ${time}, the shop standing as now`,
  notMeasured: 'NOT MEASURED',
  notMeasuredLong:
    'No fall has been followed to its end with the shop standing as it does now. It happens by itself when a furnace goes out after work. Never raise carbon monoxide for a test.',
  following: 'A fall is being followed now: leave doors and fans as they are.',
  wait: (limit: string) => `Until below ${limit} ppm`,
  waitLong: 'With nothing burning. Wait for the longer, then read the sensor before anyone goes in.',
  waitNone: 'No forecast: something may burn, or nothing was measured.',
  waitBelow: 'The reading is not above it now.',
  waitOpen: (low: string) => `${low} at the soonest, no end known`,
  source: 'Most CO the room can carry',
  sourceUnit: 'L/h',
  sourcePlan: (low: string, limit: string) =>
    `Plan with ${low} litres an hour of pure gas, for ${limit} ppm. More is above the limit.`,
  sourceRange: (low: string, high: string) => `${low} to ${high}`,
  sourceNone: 'Needs the volume of the room (Setup) and a measured fall.',
  unknown: 'UNKNOWN',
  history: 'Measured falls by how the shop stood',
  historyEmpty: 'None yet.',
  stood: 'How it stood',
  stoodUnknown: 'nobody said',
  when: 'When',
  gas: 'Gas',
  rate: 'Air changes an hour',
  interval: 'Interval',
  held: 'Conditions',
  heldAll: 'held',
  heldUnknown: 'not all known',
  broken: (why: string) => `does not count: ${why}`,
  ended: 'Ended when',
} as const;
