import type { Archive } from '../archive/types.ts';
import type { MessageSource } from '../broker/types.ts';
import type { Alarm, Finding } from '../contract/alarm.ts';
import { compareUrgency } from '../contract/alarm-groups.ts';
import type { NotifyTestResult } from '../contract/notify.ts';
import type { Clock } from '../time/clock.ts';
import { worded } from '../watch/alarm-words.ts';
import type { ChangeBus } from '../watch/changes.ts';
import { type Beacon, createBeacon } from './beacon.ts';
import { createDeliver, type Deliver } from './deliver.ts';
import { startNotify, stepNotify } from './engine.ts';
import type { Lookup } from './guard.ts';
import { lightState } from './light.ts';
import { alarmMessage, testMessage } from './message.ts';
import { createPing, type Ping } from './ping.ts';
import { createSettingsDesk, type SettingsDesk } from './settings.ts';
import type { KeptNotifyState, NotifyEvent, NotifyState, SeenAlarm, Send, SendOutcome } from './types.ts';
import { type KeptWay, keptWay } from './ways.ts';

/** The shell around the rules: hears alarms, sends, keeps what was told, and says where it does not get through. */

const TICK_MS = 1000;
/** What is under way when the hub stops gets so long to be noted as sent: else it is sent again. */
const LAST_WORDS_MS = 2000;

export interface NotifierParts {
  readonly archive: Archive;
  readonly bus: ChangeBus;
  readonly clock: Clock;
  readonly lookup: Lookup;
  /** From 0 to below 1. */
  readonly jitter: () => number;
  /** False: nothing is stored or judged. */
  readonly healthy: () => boolean;
  readonly onFault: (fault: unknown) => void;
}

export class Notifier {
  readonly settings: SettingsDesk;
  readonly #parts: NotifierParts;
  readonly #deliver: Deliver;
  readonly #ping: Ping;
  #ways: readonly KeptWay[] = [];
  #state: NotifyState;
  #keptText = '';
  #open = new Map<string, Alarm>();
  #beacon: Beacon | null = null;
  #stops: (() => void)[] = [];
  readonly #sending = new Set<Promise<void>>();

  constructor(parts: NotifierParts) {
    this.#parts = parts;
    const { archive, clock } = parts;
    this.settings = createSettingsDesk(archive);
    const outside = { clock, lookup: parts.lookup, allowed: () => this.settings.networks() };
    this.#deliver = createDeliver(outside, this.settings);
    this.#ping = createPing({ ...parts, outside, settings: () => this.settings.kept() });
    const kept = archive.notifyDocument('state') as KeptNotifyState | null;
    const unit = archive.shop().settings.displayUnit;
    for (const row of archive.alarms({ state: 'open', limit: 10_000 }))
      this.#open.set(row.id, worded(row, unit));
    this.#ways = archive.notifyWays().map(keptWay);
    this.#state = startNotify(this.settings.timeZone(), kept, [...this.#open.values()].map(seen));
  }

  /** Sends what is due and listens from now on. `publish`: null where there is no broker to speak through. */
  start(publish: MessageSource['publish'] | null): void {
    const { bus, clock, onFault } = this.#parts;
    this.configured();
    if (publish !== null) this.#beacon = createBeacon(this.#beaconParts(), publish);
    this.#stops = [
      bus.listen(
        (change) => {
          if (change.type === 'alarm') this.#heard(change.alarm);
        },
        ['alarm'],
      ),
      clock.every(TICK_MS, () => {
        try {
          this.tick();
        } catch (fault) {
          onFault(fault);
        }
      }),
    ];
  }

  async stop(): Promise<void> {
    for (const stop of this.#stops.splice(0)) stop();
    await this.#beacon?.stop();
    await new Promise<void>((resolve) => {
      const cancel = this.#parts.clock.after(LAST_WORDS_MS, resolve);
      void this.settled().then(() => {
        cancel();
        resolve();
      });
    });
  }

  /** Resolves when nothing is on its way any more. */
  async settled(): Promise<void> {
    while (this.#sending.size > 0) await Promise.all(this.#sending);
  }

  tick(): void {
    const at = this.#parts.clock.now();
    this.#take({ type: 'tick', at });
    this.#beacon?.tick();
    this.#follow(this.#ping.tick(at));
  }

  /** Ways that do not get through, as findings for the alarm book. */
  findings(): readonly Finding[] {
    return this.#ways.flatMap(({ id, name, enabled }): Finding[] => {
      const trouble = this.#state.ways[id]?.trouble;
      if (!enabled || !trouble) return [];
      return [
        {
          kind: 'notify-failed',
          subject: id,
          since: trouble.since,
          params: { way: name, code: trouble.code },
        },
      ];
    });
  }

  ways(): readonly KeptWay[] {
    return this.#ways;
  }

  troubleOf(id: string) {
    return this.#state.ways[id]?.trouble ?? null;
  }

  /** Ways or settings were changed by a person. */
  configured(): void {
    const { archive, clock } = this.#parts;
    this.#ways = archive.notifyWays().map(keptWay);
    const rules = this.#ways.map(({ id, enabled, rule }) => ({ id, enabled, rule }));
    this.#take({ type: 'configured', at: clock.now(), zone: this.settings.timeZone(), rules });
  }

  /** Sends a test by one way and waits for what comes of it. */
  async test(way: KeptWay): Promise<NotifyTestResult> {
    const { archive, clock } = this.#parts;
    const about = { delivery: `test-${clock.now()}`, at: clock.now(), shop: archive.shop().settings.name };
    const message = testMessage(about);
    const outcome = await this.#deliver(way, message);
    this.#log(way, 'test', message.title, 1, outcome);
    this.#take({ type: 'tested', at: clock.now(), wayId: way.id, outcome });
    return outcome.ok
      ? { ok: true, code: null, detail: '' }
      : { ok: false, code: outcome.code, detail: outcome.detail };
  }

  #heard(alarm: Alarm): void {
    if (alarm.state === 'normal') this.#open.delete(alarm.id);
    else this.#open.set(alarm.id, alarm);
    this.#take({ type: 'alarm', at: this.#parts.clock.now(), alarm: seen(alarm) });
    this.#beacon?.tick();
  }

  #take(event: NotifyEvent): void {
    const { state, sends } = stepNotify(this.#state, event);
    this.#state = state;
    this.#keep();
    for (const send of sends) this.#follow(this.#send(send));
  }

  /** Written only when it says something new: most ticks do not. */
  #keep(): void {
    const { ways, next } = this.#state;
    const text = JSON.stringify({ ways, next });
    if (text === this.#keptText) return;
    this.#parts.archive.saveNotifyDocument('state', { ways, next } satisfies KeptNotifyState);
    this.#keptText = text;
  }

  #follow(work: Promise<void> | null): void {
    if (work === null) return;
    const watched = work.catch(this.#parts.onFault).finally(() => this.#sending.delete(watched));
    this.#sending.add(watched);
  }

  async #send({ sendId, wayId, alarmIds, reason, attempt }: Send): Promise<void> {
    const { archive, clock, jitter } = this.#parts;
    const way = this.#ways.find(({ id }) => id === wayId);
    if (way === undefined) return;
    const { id, settings } = archive.shop();
    const about = { delivery: `${id}-${sendId}`, at: clock.now(), shop: settings.name };
    const alarms = alarmIds.flatMap((alarmId) => this.#open.get(alarmId) ?? []).sort(compareUrgency);
    const message = alarmMessage(about, reason, alarms);
    const outcome = await this.#deliver(way, message);
    this.#log(way, reason, message.title, attempt, outcome);
    this.#take({ type: 'outcome', at: clock.now(), wayId, sendId, outcome, jitter: jitter() });
  }

  #log(
    way: KeptWay,
    reason: Send['reason'] | 'test',
    title: string,
    attempt: number,
    outcome: SendOutcome,
  ): void {
    this.#parts.archive.logNotify({
      at: this.#parts.clock.now(),
      wayId: way.id,
      way: way.name,
      kind: way.target.kind,
      reason,
      title,
      outcome: outcome.ok ? 'sent' : 'failed',
      code: outcome.ok ? null : outcome.code,
      detail: outcome.ok ? '' : outcome.detail,
      attempt,
    });
  }

  #beaconParts() {
    const { clock, healthy, onFault } = this.#parts;
    return {
      clock,
      healthy,
      onFault,
      prefix: () => this.settings.topicPrefix(),
      everySeconds: () => this.settings.kept().heartbeatSeconds,
      light: () => lightState([...this.#open.values()].sort(compareUrgency), clock.now()),
    };
  }
}

/** Since it was raised, not since it last came back: an alarm that chatters must not put off the next person. */
function seen({ id, kind, priority, subject, state, raisedAt }: Alarm): SeenAlarm {
  return { id, kind, priority, subject, state, since: raisedAt };
}
