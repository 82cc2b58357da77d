import type { AlarmPriority } from '../../hub/contract/alarm.ts';

/** Words of the page of alarms. What an alarm is about has its words in the contract. */

export const PRIORITY_WORD: Readonly<Record<AlarmPriority, string>> = {
  danger: 'Danger',
  warning: 'Warning',
};

/** Names of the rules that hold an alarm back. A rule without a name here is said by its code. */
const RULE_WORDS: Readonly<Record<string, string>> = {
  'probe-at-fault': 'the probe that it rests on is at fault, and that alarm stands',
  'told-by-its-cause': 'the alarm of its cause stands and tells the same trouble',
};

export const ruleWords = (rule: string): string => RULE_WORDS[rule] ?? rule;

/** How an alarm stands, in words. Times are written by the caller. */
export const standingWords = {
  unacknowledged: (since: string) => `Unacknowledged. It holds since ${since}; nobody has seen it yet.`,
  acknowledged: (by: string, at: string) => `Acknowledged by ${by} at ${at}. It still holds.`,
  returned: (at: string) => `Returned, unacknowledged. It is over since ${at}; nobody has seen it yet.`,
  latchedUnseen: (at: string) =>
    `Latched, unacknowledged. It is over since ${at} and stays until it is acknowledged and then reset.`,
  latchedSeen: (by: string, at: string) =>
    `Latched, acknowledged by ${by}. It is over since ${at} and stays until somebody resets it.`,
  shelved: (until: string, left: string, by: string, why: string) =>
    `Shelved until ${until} (${left} left) by ${by}: ${why}`,
  suppressed: (rule: string) => `Suppressed by rule: ${rule}.`,
  outOfService: (at: string, by: string, why: string) =>
    `Out of service since ${at} by ${by} because: ${why}`,
  normal: 'Back to normal.',
  holds: (since: string) => `What it is about holds now, since ${since}.`,
  holdsNot: 'What it is about does not hold now.',
  somebody: 'somebody',
  unknownTime: 'an unknown time',
} as const;

export const alarmWords = {
  title: 'Alarms',
  now: 'Now',
  review: 'Review',
  journal: 'Journal',
  definitions: 'Definitions',
  asking: 'Asking the hub',
  notCurrent: 'Not current: the hub is not heard. Alarms may have come since.',

  none: 'No alarm stands now.',
  noneLong:
    'It says that no limit of what is watched was found broken. It does not say that the air or the gas is safe: heed the certified alarm.',
  standing: (groups: number) =>
    groups === 1 ? 'One thing to see to' : `${groups} things to see to, the most urgent first`,
  first: 'First',
  follows: (count: number) =>
    count === 1 ? 'Follows from the same cause' : `${count} follow from the same cause`,
  flood: (since: string) => `Alarm flood since ${since}`,
  floodLong:
    'More alarms come than one person can answer. Take the first, let the rest wait, and make the shop safe before you clear the list.',
  guidance: 'What to do',
  raised: (at: string) => `raised ${at}`,
  acknowledge: 'Acknowledge',
  reset: 'Reset',
  unshelve: 'Take it off the shelf',
  giveBack: 'Return to service',
  nameOf: (act: string, title: string) => `${act}: ${title}`,
  putAside: 'Put aside',
  cannotPutAside: 'Danger to life: never shelved, never out of service. See to its cause.',
  whoIsHere: 'Who is at this screen?',
  whoHint: 'Stands in the journal beside what is pressed here.',

  shelf: 'On the shelf',
  shelfNone: 'Nothing is shelved.',
  out: 'Out of service',
  outNone: 'Nothing is out of service.',
  held: 'Suppressed by rule',
  heldNone: 'No rule holds anything back.',
  heldSince: (since: string) => `It holds since ${since}.`,

  putAsideTitle: (title: string) => `Put aside: ${title}`,
  whichWay: 'How',
  shelve: 'Shelve: it comes back by itself',
  takeOut: 'Out of service: for work, until it is returned',
  minutes: 'For how long',
  minutesUnit: (count: number) => `${count} min`,
  hoursUnit: (count: number) => (count === 1 ? '1 hour' : `${count} hours`),
  by: 'Who',
  why: 'Why',
  whyBack: 'What was done and tested',
  shelveDo: 'Shelve it',
  takeOutDo: 'Take it out of service',
  giveBackTitle: (title: string) => `Return to service: ${title}`,
  cancel: 'Leave it as it is',
} as const;
