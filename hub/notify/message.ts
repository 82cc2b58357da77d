import type { Alarm } from '../contract/alarm.ts';
import { notifyWords } from '../contract/words/en-notify.ts';
import type { SendReason } from './types.ts';

/** What is said, before it is a mail, a document or a note on a phone. */
export interface Message {
  /** The same for every attempt. */
  readonly delivery: string;
  readonly at: number;
  readonly reason: SendReason | 'test';
  readonly shop: string;
  readonly title: string;
  readonly text: string;
  readonly alarms: readonly Alarm[];
}

interface About {
  readonly delivery: string;
  readonly at: number;
  readonly shop: string;
}

/** The most pressing alarm leads; every other has its line. `alarms` must not be empty. */
export function alarmMessage(about: About, reason: SendReason, alarms: readonly Alarm[]): Message {
  const [lead] = alarms;
  const others = alarms.length - 1;
  const title = lead === undefined ? about.shop : notifyWords.title(lead.priority, lead.title, others);
  const text = [
    notifyWords.reason[reason],
    ...alarms.map(({ title: name, message, guidance }) => notifyWords.alarm(name, message, guidance)),
    notifyWords.caution,
  ].join('\n\n');
  return { ...about, reason, title: `${about.shop}: ${title}`, text, alarms };
}

export function testMessage(about: About): Message {
  const text = `${notifyWords.test}\n\n${notifyWords.caution}`;
  return { ...about, reason: 'test', title: `${about.shop}: ${notifyWords.testTitle}`, text, alarms: [] };
}
