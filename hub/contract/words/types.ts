import type { AlarmKind, Params } from '../alarm.ts';
import type { BenchReasonCode } from '../bench.ts';
import type { FiringEvent, NextMoveCode } from '../firing.ts';
import type { ReminderCode } from '../reminder.ts';
import type { DisplayUnit, Schedule } from '../schedule.ts';
import type { RecordWords } from './say-record.ts';

/** What can be said against a segment's result. */
export const REASON_CODES = [
  'moved-on-early',
  'finished-early',
  'core-short',
  'core-cold',
  'core-unsure',
  'not-begun',
  'not-confirmed',
  'overshoot',
  'short-overshoot',
  'blind',
  'interrupted',
  'rate-not-seen',
  'heated-too-fast',
  'heated-slowly',
  'cooled-too-fast',
  'cooled-too-fast-briefly',
  'cooled-too-slowly',
] as const;
export type ReasonCode = (typeof REASON_CODES)[number];

/** What can be said of a channel's ±. */
export const UNCERTAINTY_CODES = [
  'by-class',
  'by-correction',
  'no-probe',
  'no-class',
  'beyond-class',
  'beyond-type',
] as const;
export type UncertaintyCode = (typeof UNCERTAINTY_CODES)[number];

/** What numbers about the air do not tell. */
export const AIR_NOTICE_CODES = [
  'not-a-safety-device',
  'no-claim',
  'where-it-hangs',
  'gaps-are-held',
  'estimate-for-an-adult',
  'alarm-is-no-evidence',
  'may-be-hydrogen',
  'holds-for-that-hour',
] as const;
export type AirNoticeCode = (typeof AIR_NOTICE_CODES)[number];

export interface AlarmWords {
  /** What is wrong, in a few words. */
  readonly title: string;
  /** What was measured, against which limit. */
  readonly message: string;
  /** What to check and do, in order. */
  readonly guidance: string[];
}

/** Why an alarm exists: its rationalisation in words. */
export interface RationaleWords {
  readonly name: string;
  readonly cause: string;
  /** What comes of it if nobody acts. */
  readonly consequence: string;
  /** What to do first. */
  readonly action: string;
}

/** Everything that a person reads from the hub, in one language. Temperatures are shown in `unit`. */
export interface Words {
  alarm(kind: AlarmKind, params: Params, unit: DisplayUnit): AlarmWords;
  rationale(kind: AlarmKind): RationaleWords;
  /** At most 34 characters: it is read from five metres. */
  nextMove(code: NextMoveCode, params: Params, unit: DisplayUnit): string;
  reason(code: ReasonCode, params: Params, unit: DisplayUnit): string;
  /** What the soak clock listens to. */
  soakClock(params: Params): string;
  /** How far a channel can be trusted, and what is not in that. */
  uncertainty(code: UncertaintyCode, params: Params, unit: DisplayUnit): string;
  /** What the trade reminds itself of at a step: each is common practice without a source. */
  readonly reminder: Readonly<Record<ReminderCode, string>>;
  /** Why pieces stand together on the bench list, and why in this order. */
  bench(code: BenchReasonCode, params: Params, unit: DisplayUnit): string;
  /** A change of a firing's load, by the marks that went in and came out. */
  load(taken: readonly string[], left: readonly string[]): string;
  /** What a firing did to its pieces. */
  readonly record: RecordWords;
  /** The safety note on every record. */
  readonly caution: string;
  /** What numbers about the air do not tell. */
  airNotice(code: AirNoticeCode): string;
  event(event: Omit<FiringEvent, 'text'>, schedule: Pick<Schedule, 'segments' | 'displayUnit'>): string;
}
