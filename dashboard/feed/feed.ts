import { type ReadonlySignal, signal } from '@preact/signals';
import { type LiveHeartbeat, LiveMessage, type LiveSnapshot } from '../../hub/contract/live.ts';
import type { Reading } from '../../hub/contract/reading.ts';
import { isBlind, type Link, type LinkEvent, startLink, stepLink } from './link.ts';
import { applyMessage, type FeedState } from './state.ts';

/** What the feed needs from the world; the browser's own by default, a stand-in in tests. */
export interface FeedWorld {
  readonly open: (address: string) => SocketLike;
  /** A clock that never jumps, ms. */
  readonly steadyMs: () => number;
  /** The wall clock, epoch ms. */
  readonly epochMs: () => number;
  readonly chance: () => number;
  readonly every: (ms: number, run: () => void) => () => void;
}

export interface SocketLike {
  onmessage: ((event: { data: unknown }) => void) | null;
  onclose: (() => void) | null;
  close(): void;
}

export type ReadingListener = (channel: string, reading: Reading) => void;

/** The live connection and what it brought, as signals. */
export interface Feed {
  /** Null before the first snapshot. */
  readonly state: ReadonlySignal<FeedState | null>;
  /** True when nothing on the screen may be taken as current. */
  readonly blind: ReadonlySignal<boolean>;
  /** False when the hub stores but a judge has failed. */
  readonly judging: ReadonlySignal<boolean>;
  /** Since when more alarms come than a person can answer, epoch ms, as the hub says; null: no flood. */
  readonly floodSince: ReadonlySignal<number | null>;
  /** The hub's clock, epoch ms, moving every half second, also without a connection. */
  readonly now: ReadonlySignal<number>;
  /** The hub's clock at the last message, epoch ms; null before the first. */
  readonly heardAt: ReadonlySignal<number | null>;
  /** True when the hub sends what this page cannot read: the page is older than the hub. */
  readonly notUnderstood: ReadonlySignal<boolean>;
  /** Every reading as it comes (the state keeps only the newest). Returns the way to stop listening. */
  onReading(listener: ReadingListener): () => void;
  stop(): void;
}

const TICK_MS = 500;

/** Connects to the live feed at `address` (`ws://…/api/v1/live`) and stays with it until stopped. */
export function startFeed(address: string, world: FeedWorld): Feed {
  const state = signal<FeedState | null>(null);
  const blind = signal(false);
  const judging = signal(true);
  const floodSince = signal<number | null>(null);
  const now = signal(world.epochMs());
  const heardAt = signal<number | null>(null);
  const notUnderstood = signal(false);
  const listeners = new Set<ReadingListener>();
  let socket: SocketLike | null = null;
  let offsetMs = 0;
  let wantsSnapshot = false;

  const first = startLink(world.steadyMs());
  let link: Link = first.link;

  const step = (event: LinkEvent) => {
    const next = stepLink(link, event);
    link = next.link;
    if (next.command !== 'nothing') drop();
    if (next.command === 'open') open();
    blind.value = isBlind(link, event.atMs);
  };
  const timed = () => ({ atMs: world.steadyMs(), chance: world.chance() });

  const open = () => {
    const known = wantsSnapshot ? null : state.peek();
    const opened = world.open(known ? `${address}?${resumeQuery(known)}` : address);
    socket = opened;
    opened.onmessage = (event) => take(event.data);
    opened.onclose = () => step({ kind: 'closed', ...timed() });
  };
  const drop = () => {
    if (socket === null) return;
    socket.onmessage = null;
    socket.onclose = null;
    socket.close();
    socket = null;
  };
  const take = (data: unknown) => {
    const message = understand(data);
    notUnderstood.value = message === null;
    // What cannot be read is no sign of life: better blind than looking at something half understood.
    if (message === null) return;
    const applied = applyMessage(state.peek(), message);
    wantsSnapshot = applied.verdict === 'gap';
    if (wantsSnapshot) return step({ kind: 'resync', ...timed() });
    if (message.type === 'snapshot' || message.type === 'heartbeat') keepTime(message);
    state.value = applied.state;
    if (message.type === 'reading') for (const tell of listeners) tell(message.channel, message.reading);
    heardAt.value = world.epochMs() + offsetMs;
    step({ kind: 'message', atMs: world.steadyMs() });
  };
  const keepTime = (message: LiveSnapshot | LiveHeartbeat) => {
    offsetMs = message.now - world.epochMs();
    now.value = message.now;
    if (message.type === 'snapshot') return;
    judging.value = message.judging;
    floodSince.value = message.alarmFloodSince ?? null;
  };

  open();
  const stopTicking = world.every(TICK_MS, () => {
    now.value = world.epochMs() + offsetMs;
    step({ kind: 'tick', ...timed() });
  });
  return {
    state,
    blind,
    judging,
    floodSince,
    now,
    heardAt,
    notUnderstood,
    onReading: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    stop: () => {
      stopTicking();
      drop();
    },
  };
}

function resumeQuery(state: FeedState): string {
  return new URLSearchParams({ after: String(state.seq), epoch: state.epoch }).toString();
}

function understand(data: unknown): LiveMessage | null {
  if (typeof data !== 'string') return null;
  try {
    const parsed = LiveMessage.safeParse(JSON.parse(data));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
