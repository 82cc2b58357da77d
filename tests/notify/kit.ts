import { NotifyRule } from '../../hub/contract/notify.ts';
import { startNotify, stepNotify } from '../../hub/notify/engine.ts';
import type {
  KeptNotifyState,
  NotifyEvent,
  NotifyState,
  SeenAlarm,
  Send,
  SendOutcome,
  WayRule,
} from '../../hub/notify/types.ts';
import { MORNING } from '../harness/shop.ts';

export const MINUTE = 60_000;
export const FAILED: SendOutcome = { ok: false, code: 'not-reached', detail: 'no answer', passing: true };
export const REFUSED: SendOutcome = { ok: false, code: 'sign-in-refused', detail: '535', passing: false };

export function way(id: string, rule: Partial<NotifyRule> = {}): WayRule {
  return {
    id,
    enabled: true,
    rule: NotifyRule.parse({ priorities: ['danger', 'warning'], ...rule }),
  };
}

export function seenAlarm(id: string, more: Partial<SeenAlarm> = {}): SeenAlarm {
  const usual = { kind: 'unsafe-air-second', priority: 'danger', subject: 'air' } as const;
  return { ...usual, state: 'unacknowledged', since: MORNING, id, ...more };
}

/** The rules under a clock that is moved by hand; `answers` says what comes of each message. */
export class Rules {
  state: NotifyState;
  now = MORNING;
  readonly sent: Send[] = [];
  answer: (send: Send) => SendOutcome | null = () => ({ ok: true });
  jitter = 0.5;

  constructor(
    rules: readonly WayRule[],
    kept: KeptNotifyState | null = null,
    alarms: readonly SeenAlarm[] = [],
    zone = 'UTC',
  ) {
    this.state = startNotify(zone, kept, alarms);
    this.take({ type: 'configured', at: this.now, zone, rules });
  }

  take(event: NotifyEvent): void {
    const { state, sends } = stepNotify(this.state, event);
    this.state = state;
    for (const send of sends) {
      this.sent.push(send);
      const outcome = this.answer(send);
      if (outcome !== null) this.settle(send, outcome);
    }
  }

  settle({ wayId, sendId }: Send, outcome: SendOutcome): void {
    this.take({ type: 'outcome', at: this.now, wayId, sendId, outcome, jitter: this.jitter });
  }

  alarm(alarm: SeenAlarm): void {
    this.take({ type: 'alarm', at: this.now, alarm });
  }

  /** Second by second, as the shell ticks. */
  pass(seconds: number): void {
    for (let second = 0; second < seconds; second++) {
      this.now += 1000;
      this.take({ type: 'tick', at: this.now });
    }
  }

  told(wayId: string): string[] {
    return this.sent
      .filter((send) => send.wayId === wayId)
      .map((send) => `${send.reason} ${send.alarmIds.join('+')}`);
  }
}
