import type { AlarmKind, AlarmPriority, AlarmState } from '../contract/alarm.ts';
import type { NotifyRule, WayTrouble } from '../contract/notify.ts';

/** What the rules for reaching people need to know: everything else stays outside. */

/** One alarm as the rules see it. Instants epoch ms. */
export interface SeenAlarm {
  readonly id: string;
  readonly kind: AlarmKind;
  readonly priority: AlarmPriority;
  readonly subject: string;
  readonly state: AlarmState;
  /** When it was raised. */
  readonly since: number;
}

/** One way of reaching people, without its address. */
export interface WayRule {
  readonly id: string;
  /** Off: it tells nothing and keeps what it has told. */
  readonly enabled: boolean;
  readonly rule: NotifyRule;
}

/** What one way has told of one alarm. */
export interface Told {
  readonly times: number;
  readonly lastAt: number;
}

/** A message of one way that has not got through yet. At most one a way. */
export interface Outgoing {
  readonly sendId: string;
  readonly alarmIds: readonly string[];
  readonly reason: SendReason;
  /** Sending: with the shell. Waiting: until `dueAt`, epoch ms. */
  readonly phase: 'sending' | 'waiting';
  readonly dueAt: number;
}

export interface WayState {
  readonly told: Readonly<Record<string, Told>>;
  readonly outgoing: Outgoing | null;
  /** Failures in a row. */
  readonly failures: number;
  readonly trouble: WayTrouble | null;
}

export interface NotifyState {
  readonly zone: string;
  readonly rules: readonly WayRule[];
  readonly alarms: readonly SeenAlarm[];
  readonly ways: Readonly<Record<string, WayState>>;
  /** Numbers the messages. */
  readonly next: number;
}

/** What is kept over a restart. */
export type KeptNotifyState = Pick<NotifyState, 'ways' | 'next'>;

export type SendReason = 'raised' | 'not-acknowledged' | 'repeated';

/** A message to send now. */
export interface Send {
  readonly sendId: string;
  readonly wayId: string;
  readonly alarmIds: readonly string[];
  readonly reason: SendReason;
  /** From 1. */
  readonly attempt: number;
}

export type SendOutcome =
  | { readonly ok: true }
  | {
      readonly ok: false;
      /** Stable code. */
      readonly code: string;
      readonly detail: string;
      /** False: trying again soon will not help. */
      readonly passing: boolean;
    };

export type NotifyEvent =
  | {
      readonly type: 'configured';
      readonly at: number;
      readonly zone: string;
      readonly rules: readonly WayRule[];
    }
  | { readonly type: 'alarm'; readonly at: number; readonly alarm: SeenAlarm }
  | { readonly type: 'tick'; readonly at: number }
  | {
      readonly type: 'outcome';
      readonly at: number;
      readonly wayId: string;
      readonly sendId: string;
      readonly outcome: SendOutcome;
      /** From 0 to below 1: spreads the attempts, so that many senders do not come back at once. */
      readonly jitter: number;
    }
  | {
      readonly type: 'tested';
      readonly at: number;
      readonly wayId: string;
      readonly outcome: SendOutcome;
    };

export interface NotifyStep {
  readonly state: NotifyState;
  readonly sends: readonly Send[];
}
