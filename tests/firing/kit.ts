import type { ChannelReading, Reading } from '../../hub/contract/reading.ts';
import { type Schedule, ScheduleDraft, type ScheduleDraftInput } from '../../hub/contract/schedule.ts';
import { judgementOf, nextMoveOf, startFiring, stepFiring } from '../../hub/firing/judge.ts';
import { inputsInOrder, replay } from '../../hub/firing/replay.ts';
import type { FiringCase, FiringInput, FiringState, WatchedChannel } from '../../hub/firing/types.ts';

/** A firing on a bench: cases, curves and a way to run them. Times in seconds from the start. */

export const T0 = 1_700_000_000_000;
export const at = (seconds: number): number => T0 + Math.round(seconds * 1000);

export type SegmentInput = ScheduleDraftInput['segments'][number];

export function scheduleOf(segments: SegmentInput[], displayUnit: 'Cel' | '[degF]' = 'Cel'): Schedule {
  const draft = ScheduleDraft.parse({ name: 'Bench', displayUnit, segments });
  return { ...draft, id: 'schedule', version: 1, createdAt: T0, archived: false };
}

export const CHAMBER: WatchedChannel = { id: 'chamber', staleAfterSeconds: 20, role: 'chamber' };
export const REAR: WatchedChannel = { id: 'rear', staleAfterSeconds: 20, role: 'chamber' };
export const LOAD: WatchedChannel = { id: 'load', staleAfterSeconds: 20, role: 'load' };

export function caseOf(segments: SegmentInput[], change: Partial<FiringCase> = {}): FiringCase {
  return {
    firingId: 'firing-1',
    furnaceId: 'furnace-1',
    furnaceName: 'Big forge',
    furnaceKind: 'gas-forge',
    startedAt: T0,
    schedule: scheduleOf(segments),
    watched: [CHAMBER],
    pieces: [],
    fit: null,
    settings: {
      overshootAheadSeconds: 120,
      soakStalledSeconds: 180,
      rampStalledSeconds: 600,
      language: 'en',
    },
    ...change,
  };
}

export const RAMP: SegmentInput = { kind: 'ramp', targetCelsius: 800, toleranceCelsius: 10 };
export const soak = (seconds: number): SegmentInput => ({
  kind: 'soak',
  targetCelsius: 800,
  toleranceCelsius: 10,
  durationSeconds: seconds,
});
export const QUENCH: SegmentInput = { kind: 'cool', targetCelsius: 60, medium: 'quench' };

/** Readings of one channel, one every `every` seconds from `from` to `to`. */
export function curve(
  channel: string,
  span: { from: number; to: number; every?: number },
  celsius: (seconds: number) => number,
): ChannelReading[] {
  const { from, to, every = 1 } = span;
  const count = Math.floor((to - from) / every + 1e-9);
  return Array.from({ length: count + 1 }, (_, k) => {
    const seconds = from + k * every;
    return { channel, at: at(seconds), value: celsius(seconds), quality: 'good' as const };
  });
}

/** Repeatable noise of a thermocouple at hand: quarter-degree steps, half a degree either way. */
export function noise(seed: number): () => number {
  let x = seed >>> 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return Math.round(((x >>> 0) / 2 ** 32 - 0.5) * 4) / 4;
  };
}

export interface Run {
  readonly readings: readonly ChannelReading[];
  readonly confirmations?: readonly { readonly at: number; readonly segment: number }[];
  readonly endedAt?: number;
  /** Seconds from the start. */
  readonly to: number;
}

export function grouped(readings: readonly ChannelReading[]): ChannelReading[][] {
  const byChannel = new Map<string, ChannelReading[]>();
  for (const reading of readings) {
    const own = byChannel.get(reading.channel);
    if (own === undefined) byChannel.set(reading.channel, [reading]);
    else own.push(reading);
  }
  return [...byChannel.values()].map((own) => own.sort((a, b) => a.at - b.at));
}

/** Every input of a run, in order. */
export function inputsOf(c: FiringCase, run: Run): FiringInput[] {
  return [
    ...inputsInOrder({
      readings: grouped(run.readings),
      confirmations: run.confirmations ?? [],
      finishedAt: run.endedAt ?? null,
      from: startFiring(c).at - 1,
      to: at(run.to),
      startedAt: c.startedAt,
      tickMs: 1000,
    }),
  ];
}

export function runTo(c: FiringCase, run: Run): FiringState {
  return replay(c, inputsOf(c, run));
}

export function judged(c: FiringCase, run: Run): ReturnType<typeof judgementOf> {
  return judgementOf(c, runTo(c, run));
}

/** The kinds of findings that were ever raised, in order of their first time. */
export function everRaised(c: FiringCase, run: Run): string[] {
  const events = judged(c, run).events.filter((event) => event.kind === 'finding-raised');
  return [...new Set(events.map((event) => event.finding ?? ''))];
}

/** The sentences of the wall in their order, without repetition, and when each came (seconds). */
export function sentences(c: FiringCase, run: Run): { seconds: number; code: string; text: string }[] {
  const said: { seconds: number; code: string; text: string }[] = [];
  let state = startFiring(c);
  for (const input of inputsOf(c, run)) {
    state = stepFiring(c, state, input);
    if (state.at < c.startedAt) continue;
    const { code, text } = nextMoveOf(c, state);
    if (said.at(-1)?.code !== code) said.push({ seconds: (state.at - T0) / 1000, code, text });
  }
  return said;
}

export function bad(reading: ChannelReading): ChannelReading {
  return { ...reading, quality: 'bad', reason: 'sensor-fault' };
}

export type { Reading };
