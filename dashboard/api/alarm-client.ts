import { z } from 'zod';
import {
  Alarm,
  HeldBackAlarm,
  type OutOfServiceRequest,
  type ResetAlarmRequest,
  type ReturnToServiceRequest,
  type ShelveRequest,
} from '../../hub/contract/alarm.ts';
import { AlarmDefinitionEntry } from '../../hub/contract/alarm-definition.ts';
import { AlarmJournalCheck, AlarmJournalEntry } from '../../hub/contract/alarm-journal.ts';
import { AlarmReview } from '../../hub/contract/alarm-review.ts';
import { API, asked, type Send } from './request.ts';

export interface JournalQuery {
  /** The last number of the page before, for the next. */
  readonly before?: number;
  readonly limit?: number;
}

/** The last entry of the journal as somebody kept it elsewhere. */
export interface KeptHead {
  readonly seq: number;
  /** 64 hexadecimal digits. */
  readonly hash: string;
}

/** What is asked about the alarms and done to one, beside acknowledging it. */
export interface AlarmApi {
  /** What a rule holds back now: it holds and is not announced. */
  heldBack(): Promise<HeldBackAlarm[]>;
  /** Newest first. */
  journal(query?: JournalQuery): Promise<AlarmJournalEntry[]>;
  verification(kept?: KeptHead): Promise<AlarmJournalCheck>;
  /** Epoch ms. */
  review(span: { readonly from: number; readonly to: number }): Promise<AlarmReview>;
  definitions(): Promise<AlarmDefinitionEntry[]>;
  shelve(id: string, body: z.input<typeof ShelveRequest>): Promise<Alarm>;
  unshelve(id: string, by: string): Promise<Alarm>;
  takeOut(id: string, body: z.input<typeof OutOfServiceRequest>): Promise<Alarm>;
  giveBack(id: string, body: z.input<typeof ReturnToServiceRequest>): Promise<Alarm>;
  reset(id: string, body: z.input<typeof ResetAlarmRequest>): Promise<Alarm>;
}

/** Where the whole journal can be saved from, as a file. */
export function journalAddress(format: 'jsonl' | 'csv'): string {
  return `${API}/alarms/journal/export${asked({ format })}`;
}

/** Where the table of definitions can be saved from, as a file. */
export const DEFINITIONS_ADDRESS = `${API}/alarm-definitions${asked({ format: 'csv' })}`;

export function createAlarmApi(send: Send): AlarmApi {
  const alarms = `${API}/alarms`;
  const press = (id: string, verb: string, body: object) =>
    send({ method: 'POST', path: `${alarms}/${encodeURIComponent(id)}/${verb}`, body }, Alarm);
  return {
    heldBack: () => send({ method: 'GET', path: `${alarms}/held-back` }, z.array(HeldBackAlarm)),
    journal: (query) =>
      send({ method: 'GET', path: `${alarms}/journal${asked(query)}` }, z.array(AlarmJournalEntry)),
    verification: (kept) =>
      send({ method: 'GET', path: `${alarms}/journal/verification${asked(kept)}` }, AlarmJournalCheck),
    review: (span) => send({ method: 'GET', path: `${alarms}/review${asked(span)}` }, AlarmReview),
    definitions: () =>
      send({ method: 'GET', path: `${API}/alarm-definitions` }, z.array(AlarmDefinitionEntry)),
    shelve: (id, body) => press(id, 'shelve', body),
    unshelve: (id, by) => press(id, 'unshelve', { by }),
    takeOut: (id, body) => press(id, 'out-of-service', body),
    giveBack: (id, body) => press(id, 'return-to-service', body),
    reset: (id, body) => press(id, 'reset', body),
  };
}
