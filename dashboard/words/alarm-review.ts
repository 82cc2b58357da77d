import type { AlarmState } from '../../hub/contract/alarm.ts';
import type { AlarmMeasure } from '../../hub/contract/alarm-review.ts';

/** Words of the review of the alarms: the figures of EEMUA 191 and ISA-18.2. */

type Measure = AlarmMeasure['measure'];

export const MEASURE_NAMES: Readonly<Record<Measure, string>> = {
  'alarms-per-hour': 'Alarms an hour, mean',
  'alarms-per-ten-minutes': 'Alarms in ten minutes, mean',
  'most-in-ten-minutes': 'Most in any ten minutes',
  'busy-periods-percent': 'Ten-minute periods with more than ten',
  'flood-percent': 'Time in flood',
  'most-frequent-percent': 'Share of the ten most frequent',
  chattering: 'Chattering alarms',
  fleeting: 'Fleeting alarms',
  stale: 'Stale alarms, over 24 hours',
};

/** Written after the number. */
export const MEASURE_UNITS: Readonly<Record<Measure, string>> = {
  'alarms-per-hour': '',
  'alarms-per-ten-minutes': '',
  'most-in-ten-minutes': '',
  'busy-periods-percent': ' %',
  'flood-percent': ' %',
  'most-frequent-percent': ' %',
  chattering: '',
  fleeting: '',
  stale: '',
};

/** Decimals where the figure is not a count. */
export const MEASURE_DECIMALS: Readonly<Partial<Record<Measure, number>>> = {
  'alarms-per-hour': 2,
  'alarms-per-ten-minutes': 2,
  'busy-periods-percent': 1,
  'flood-percent': 1,
  'most-frequent-percent': 0,
};

export const VERDICT_NAMES: Readonly<Record<AlarmMeasure['verdict'], string>> = {
  within: 'within the target',
  manageable: 'above the target, can be managed',
  above: 'too many',
};

export const STANDING_NAMES: Readonly<Record<AlarmMeasure['standing'], string>> = {
  published: 'published figure',
  'site-rule': 'one site’s rule',
};

export const STATE_NAMES: Readonly<Record<AlarmState, string>> = {
  unacknowledged: 'unacknowledged',
  acknowledged: 'acknowledged',
  'returned-unacknowledged': 'returned, unacknowledged',
  'latched-unacknowledged': 'latched, unacknowledged',
  'latched-acknowledged': 'latched, acknowledged',
  shelved: 'shelved',
  suppressed: 'suppressed by rule',
  'out-of-service': 'out of service',
  normal: 'normal',
};

export const reviewWords = {
  title: 'How the alarms did',
  span: 'Over the last',
  spans: { day: '24 hours', week: '7 days', month: '30 days', quarter: '90 days', own: 'own dates' },
  from: 'From',
  to: 'To, that day included',
  spanWrong: 'The first day comes after the last.',
  spanLong: 'At most 400 days.',
  asking: 'Asking the hub',
  told: (from: string, to: string) => `${from} to ${to}`,
  announced: (count: number) =>
    count === 1 ? 'One alarm asked for somebody.' : `${count} alarms asked for somebody.`,
  tooShort: 'These figures are meant for 30 days at least: over a shorter time they say little.',
  notProof:
    'Few alarms are no proof of a safe shop: a limit that is never reached, or a sensor that is dead, is quiet too.',
  measures: 'Against the targets',
  target: (text: string) => `target ${text}`,
  upTo: (text: string) => `up to ${text}`,
  under: (text: string) => `under ${text}`,
  manageableTo: (text: string) => `up to ${text} can be managed`,
  source: (source: string, standing: string) => `${source} (${standing})`,
  frequent: 'The most frequent',
  frequentNone: 'None came.',
  times: (count: number, percent: string) => `${count} ×, ${percent} %`,
  answer: 'Time to acknowledge',
  answerNone: 'None was acknowledged.',
  median: 'Half within',
  ninetieth: 'Nine of ten within',
  answered: 'Acknowledged',
  unanswered: 'Not acknowledged',
  standing: 'Standing at the end',
  standingNone: 'None stood.',
  since: (at: string) => `since ${at}`,
  setAsideHolds: 'holds',
  setAsideOver: 'over',
  chattering: 'Chattering',
  chatteringLong: 'Three or more in one minute. Widen its deadband or its delay.',
  chatteringNone: 'None chattered.',
  chatter: (count: number, most: number) => `${count} times, ${most} in its worst minute`,
  fleeting: 'Fleeting',
  fleetingLong: 'Gone within ten seconds, before anyone could act.',
  fleetingNone: 'None was fleeting.',
  stale: 'Stale',
  staleLong: 'Holding for more than 24 hours: repair its cause or change its limit.',
  staleNone: 'None was stale.',
  floods: 'Floods',
  floodsLong: 'More than ten in ten minutes, until fewer than five.',
  floodsNone: 'No flood.',
  flood: (alarms: number, lasted: string) => `${alarms} alarms in ${lasted}`,
  still: 'it still runs',
} as const;
