import type { AlarmPriority, Params } from '../alarm.ts';
import { textOf } from './format.ts';

/** What the hub says to people who are not at the wall. */

const PRIORITY: Readonly<Record<AlarmPriority, string>> = { danger: 'DANGER', warning: 'Warning' };

export const notifyWords = {
  title: (priority: AlarmPriority, title: string, others: number): string =>
    `${PRIORITY[priority]}: ${title}${others > 0 ? ` (and ${others} more)` : ''}`,
  reason: {
    raised: 'An alarm has come up and waits for somebody.',
    'not-acknowledged': 'Nobody has acknowledged this alarm yet.',
    repeated: 'Still nobody has acknowledged this alarm.',
  },
  alarm: (title: string, message: string, guidance: readonly string[]): string =>
    [`${title}. ${message}`, ...guidance.map((step, index) => `${index + 1}. ${step}`)].join('\n'),
  testTitle: 'Test',
  test: 'This is a test of this way of reaching you. Nothing is wrong.',
  caution:
    'Soakwatch is an aid. It does not replace a certified alarm, and no message of it is sure to arrive. Silence does not mean that all is well.',
} as const;

const WHY: Readonly<Record<string, string>> = {
  'network-refused': 'its address is in a network that is not allowed',
  'name-not-found': 'nobody knows its address',
  'redirect-refused': 'it has moved to another address',
  gone: 'it is no longer there',
  'other-side-failed': 'the other side fails',
  'other-side-refused': 'the other side refuses it',
  'certificate-refused': 'its certificate does not hold',
  'sign-in-refused': 'user or password is refused',
  'not-reached': 'it cannot be reached',
};

/** Words of the alarm `notify-failed`. */
export const notifyFailedWords = {
  title: (params: Params): string => `Nobody is told by ${textOf(params, 'way', 'one way')}`,
  message: (params: Params): string => {
    const code = textOf(params, 'code', '');
    return `A message to ${textOf(params, 'way', 'somebody')} does not get through: ${WHY[code] ?? (code || 'nobody knows why')}`;
  },
  guidance: [
    'Do not count on being called: stay where the wall can be seen and heard.',
    'See the log under Setup, Reaching people: it says what went wrong.',
    'Mend the address, the network or the password, then press Test there.',
  ],
} as const;
