import type { ChannelReading } from '../contract/reading.ts';
import { startFiring, stepFiring } from './judge.ts';
import { type FiringCase, type FiringInput, type FiringState, instantOf } from './types.ts';

/** Readings, confirmations and ticks in the one order that live judging and replay share. */

export interface InputSpan {
  /** One array a channel, each in time order. */
  readonly readings: readonly (readonly ChannelReading[])[];
  readonly confirmations: readonly { readonly at: number; readonly segment: number }[];
  /** Span, epoch ms: after `from` (give `state.at`), up to and with `to`. */
  readonly from: number;
  readonly to: number;
  /** Ticks fall on startedAt + k * tickMs, k = 0, 1, 2 ... */
  readonly startedAt: number;
  readonly tickMs: number;
  /** When the firing was finished, epoch ms; null or absent while it runs. */
  readonly finishedAt?: number | null;
}

const ORDER: Readonly<Record<FiringInput['kind'], number>> = { reading: 0, confirm: 1, tick: 2, finish: 3 };

/** Time, then reading before confirmation before tick before finish, then channel id. */
export function compareInputs(a: FiringInput, b: FiringInput): number {
  const byTime = instantOf(a) - instantOf(b) || ORDER[a.kind] - ORDER[b.kind];
  if (byTime !== 0) return byTime;
  if (a.kind === 'reading' && b.kind === 'reading') {
    return a.reading.channel < b.reading.channel ? -1 : a.reading.channel > b.reading.channel ? 1 : 0;
  }
  if (a.kind === 'confirm' && b.kind === 'confirm') return a.segment - b.segment;
  return 0;
}

function* readingInputs(readings: readonly ChannelReading[]): Generator<FiringInput> {
  for (const reading of readings) yield { kind: 'reading', reading };
}

function* confirmInputs(timeline: InputSpan): Generator<FiringInput> {
  for (const { at, segment } of [...timeline.confirmations].sort((a, b) => a.at - b.at)) {
    yield { kind: 'confirm', at, segment };
  }
}

function* tickInputs({ from, to, startedAt, tickMs }: InputSpan): Generator<FiringInput> {
  const first = Math.max(0, Math.floor((from - startedAt) / tickMs) + 1);
  for (let at = startedAt + first * tickMs; at <= to; at += tickMs) yield { kind: 'tick', at };
}

/**
 * Every input with from < at <= to, in order. The same spans cut anywhere give the same inputs, so judging in
 * steps equals judging at once.
 */
export function* inputsInOrder(timeline: InputSpan): Generator<FiringInput> {
  const sources = [...timeline.readings.map(readingInputs), confirmInputs(timeline), tickInputs(timeline)];
  const end = timeline.finishedAt ?? null;
  if (end !== null) sources.push(finishInput(end));
  const heads = sources.map((source) => source.next());
  for (;;) {
    const place = earliest(heads);
    const head = heads[place];
    const source = sources[place];
    if (head === undefined || source === undefined || head.done === true) return;
    heads[place] = source.next();
    const at = instantOf(head.value);
    if (at > timeline.to) return;
    if (at > timeline.from) yield head.value;
  }
}

function* finishInput(at: number): Generator<FiringInput> {
  yield { kind: 'finish', at };
}

function earliest(heads: readonly IteratorResult<FiringInput>[]): number {
  let place = -1;
  let best: FiringInput | null = null;
  for (const [i, head] of heads.entries()) {
    if (head.done === true) continue;
    if (best !== null && compareInputs(head.value, best) >= 0) continue;
    best = head.value;
    place = i;
  }
  return place;
}

/** Steps a state through inputs. */
export function stepAll(c: FiringCase, state: FiringState, inputs: Iterable<FiringInput>): FiringState {
  let now = state;
  for (const input of inputs) now = stepFiring(c, now, input);
  return now;
}

/** The state that these inputs lead to from the start. */
export function replay(c: FiringCase, inputs: Iterable<FiringInput>): FiringState {
  return stepAll(c, startFiring(c), inputs);
}
