import { FAILURES_TO_TROUBLE, retryWaitMs } from './backoff.ts';
import { dueReason, isPressing } from './due.ts';
import type {
  KeptNotifyState,
  NotifyEvent,
  NotifyState,
  NotifyStep,
  Outgoing,
  SeenAlarm,
  Send,
  SendOutcome,
  SendReason,
  WayRule,
  WayState,
} from './types.ts';

/**
 * Who is told what and when, as a pure function: it reads no clock and sends nothing. What is due for one way at one
 * instant is one message, so that a flood of alarms is not a flood of messages.
 */

const NEW_WAY: WayState = { told: {}, outgoing: null, failures: 0, trouble: null };
/** The most pressing first where one message has several reasons. */
const REASONS: readonly SendReason[] = ['raised', 'not-acknowledged', 'repeated'];

/**
 * `kept`: what a hub before this one had told; what it was still sending is sent again under the same number.
 * `alarms`: everything that is not normal now; what was told of others is forgotten.
 */
export function startNotify(
  zone: string,
  kept: KeptNotifyState | null,
  alarms: readonly SeenAlarm[],
): NotifyState {
  const ways = Object.entries(kept?.ways ?? {}).map(([id, way]) => [id, resumed(way, alarms)]);
  return { zone, rules: [], alarms, ways: Object.fromEntries(ways), next: kept?.next ?? 1 };
}

function resumed(way: WayState, alarms: readonly SeenAlarm[]): WayState {
  const told = Object.entries(way.told).filter(([id]) => alarms.some((alarm) => alarm.id === id));
  const outgoing: Outgoing | null = way.outgoing && { ...way.outgoing, phase: 'waiting', dueAt: 0 };
  return { ...way, told: Object.fromEntries(told), outgoing };
}

/** Takes in one event; returns what has to be sent now. */
export function stepNotify(state: NotifyState, event: NotifyEvent): NotifyStep {
  return dispatch(taken(state, event), event.at);
}

function taken(state: NotifyState, event: NotifyEvent): NotifyState {
  switch (event.type) {
    case 'configured':
      return configured(state, event.zone, event.rules);
    case 'alarm':
      return { ...state, ...withAlarm(state, event.alarm) };
    case 'outcome':
      return withWay(state, event.wayId, (way) =>
        way.outgoing?.sendId === event.sendId ? heard(way, way.outgoing, event) : way,
      );
    case 'tested':
      return withWay(state, event.wayId, (way) => tested(way, event.outcome, event.at));
    case 'tick':
      return state;
    default:
      return event satisfies never;
  }
}

function configured(state: NotifyState, zone: string, rules: readonly WayRule[]): NotifyState {
  const ways = rules.map(({ id }) => [id, state.ways[id] ?? NEW_WAY]);
  return { ...state, zone, rules, ways: Object.fromEntries(ways) };
}

/** An alarm that is back to normal is forgotten, with everything that was told of it. */
function withAlarm(state: NotifyState, alarm: SeenAlarm): Pick<NotifyState, 'alarms' | 'ways'> {
  const others = state.alarms.filter(({ id }) => id !== alarm.id);
  if (alarm.state !== 'normal') return { alarms: [...others, alarm], ways: state.ways };
  const ways = Object.entries(state.ways).map(([id, way]) => {
    const told = Object.fromEntries(Object.entries(way.told).filter(([alarmId]) => alarmId !== alarm.id));
    return [id, { ...way, told }];
  });
  return { alarms: others, ways: Object.fromEntries(ways) };
}

function withWay(state: NotifyState, id: string, change: (way: WayState) => WayState): NotifyState {
  const way = state.ways[id];
  return way === undefined ? state : { ...state, ways: { ...state.ways, [id]: change(way) } };
}

/** What came of a message. */
function heard(
  way: WayState,
  outgoing: Outgoing,
  event: Extract<NotifyEvent, { type: 'outcome' }>,
): WayState {
  const { at, outcome, jitter } = event;
  if (outcome.ok) {
    const told = { ...way.told };
    for (const id of outgoing.alarmIds) told[id] = { times: (way.told[id]?.times ?? 0) + 1, lastAt: at };
    return { told, outgoing: null, failures: 0, trouble: null };
  }
  const failures = way.failures + 1;
  const isTrouble = !outcome.passing || failures >= FAILURES_TO_TROUBLE;
  const dueAt = at + retryWaitMs(failures, jitter, outcome.passing);
  return {
    ...way,
    failures,
    trouble: isTrouble ? troubleOf(way, outcome, at) : way.trouble,
    outgoing: { ...outgoing, phase: 'waiting', dueAt },
  };
}

function troubleOf(way: WayState, outcome: Extract<SendOutcome, { ok: false }>, at: number) {
  return { since: way.trouble?.since ?? at, code: outcome.code, detail: outcome.detail };
}

/** A test that gets through ends the trouble, and what waits goes out at once. */
function tested(way: WayState, outcome: SendOutcome, at: number): WayState {
  if (!outcome.ok) return way;
  const outgoing = way.outgoing?.phase === 'waiting' ? { ...way.outgoing, dueAt: at } : way.outgoing;
  return { ...way, failures: 0, trouble: null, outgoing };
}

function dispatch(state: NotifyState, at: number): NotifyStep {
  const sends: Send[] = [];
  const ways: Record<string, WayState> = { ...state.ways };
  let next = state.next;
  for (const rule of state.rules) {
    const way = ways[rule.id] ?? NEW_WAY;
    if (!rule.enabled) continue;
    const step = stepWay(state, rule, way, at, String(next));
    if (step.way === way) continue;
    ways[rule.id] = step.way;
    if (step.send === null) continue;
    sends.push(step.send);
    if (step.send.sendId === String(next)) next += 1;
  }
  return { state: { ...state, ways, next }, sends };
}

interface WayStep {
  readonly way: WayState;
  readonly send: Send | null;
}

/**
 * One message at a time and way. What is new goes out at once, together with what waits for another attempt: a danger
 * must not stand in a queue behind a warning.
 */
function stepWay(state: NotifyState, rule: WayRule, way: WayState, at: number, newId: string): WayStep {
  if (way.outgoing?.phase === 'sending') return { way, send: null };
  const waiting = way.outgoing;
  const still = (waiting?.alarmIds ?? []).filter((id) =>
    state.alarms.some((a) => a.id === id && isPressing(a)),
  );
  const due = dueNow(state, rule, way, at, still);
  if (waiting !== null && still.length === 0 && due.ids.length === 0) {
    return { way: { ...way, outgoing: null }, send: null };
  }
  const isRetry = waiting !== null && at >= waiting.dueAt;
  if (due.ids.length === 0 && !(isRetry && still.length > 0)) return { way, send: null };
  const isSame = waiting !== null && due.ids.length === 0 && still.length === waiting.alarmIds.length;
  const outgoing: Outgoing = {
    sendId: isSame ? waiting.sendId : newId,
    alarmIds: [...due.ids, ...still],
    reason: due.reason ?? waiting?.reason ?? 'raised',
    phase: 'sending',
    dueAt: at,
  };
  const { sendId, alarmIds, reason } = outgoing;
  const send = { sendId, wayId: rule.id, alarmIds, reason, attempt: way.failures + 1 };
  return { way: { ...way, outgoing }, send };
}

function dueNow(
  { alarms, zone }: NotifyState,
  rule: WayRule,
  way: WayState,
  at: number,
  besides: readonly string[],
): { readonly ids: readonly string[]; readonly reason: SendReason | null } {
  const found = alarms
    .filter(({ id }) => !besides.includes(id))
    .map((alarm) => ({ alarm, reason: dueReason(rule, alarm, way.told[alarm.id], at, zone) }))
    .filter(({ reason }) => reason !== null)
    .sort((a, b) => gravity(a.alarm) - gravity(b.alarm) || a.alarm.since - b.alarm.since);
  const reason = REASONS.find((one) => found.some((each) => each.reason === one)) ?? null;
  return { ids: found.map(({ alarm }) => alarm.id), reason };
}

const gravity = ({ priority }: SeenAlarm): number => (priority === 'danger' ? 0 : 1);
