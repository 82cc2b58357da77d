import type { Archive } from '../archive/types.ts';
import {
  HEARTBEAT_SECONDS,
  type LiveChange,
  type LiveHeartbeat,
  type LiveSnapshot,
} from '../contract/live.ts';
import type { Clock } from '../time/clock.ts';
import { worded } from '../watch/alarm-words.ts';
import type { Change, ChangeBus } from '../watch/changes.ts';
import type { Watch } from '../watch/watch.ts';
import { FeedClient, type FeedItem, type FeedSocket } from './feed-client.ts';

/** Changes are gathered for this long, so that a chatty node costs a wall five messages a second a channel. */
const GATHER_MS = 200;
/** How many past changes are kept for a wall that comes back. */
const REMEMBERED = 2_000;

interface FeedParts {
  readonly archive: Archive;
  readonly watch: Watch;
  readonly bus: ChangeBus;
  readonly clock: Clock;
  /** A new word for every start of the hub. */
  readonly epoch: string;
  /** False when a judge has failed lately: the wall must say so. */
  readonly judging: () => boolean;
}

export interface ResumePoint {
  readonly epoch: string;
  readonly after: number;
}

/** The live feed: numbers the changes, remembers the last of them, and hands them to every wall. */
export class Feed {
  readonly #parts: FeedParts;
  readonly #clients = new Set<FeedClient>();
  #seq = 0;
  #gathered = new Map<string, Change>();
  #remembered: FeedItem[] = [];
  #stops: (() => void)[] = [];

  constructor(parts: FeedParts) {
    this.#parts = parts;
  }

  start(): void {
    const { bus, clock } = this.#parts;
    this.#stops = [
      bus.listen((change) => this.#gather(change)),
      clock.every(GATHER_MS, () => this.#release()),
      clock.every(HEARTBEAT_SECONDS * 1000, () => this.#beat()),
    ];
  }

  stop(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
    this.#clients.clear();
  }

  /** A wall joins. Returns the way to leave. */
  join(socket: FeedSocket, resume: ResumePoint | null): () => void {
    this.#release();
    const client = new FeedClient(socket);
    this.#clients.add(client);
    const missed = resume && this.#missed(resume);
    const items = missed ?? [{ seq: this.#seq, key: 'snapshot', text: JSON.stringify(this.#snapshot()) }];
    client.offer([...items, this.#heartbeat()], this.#parts.clock.now());
    return () => this.#clients.delete(client);
  }

  #missed({ epoch, after }: ResumePoint): FeedItem[] | null {
    const oldest = this.#remembered[0]?.seq ?? this.#seq + 1;
    if (epoch !== this.#parts.epoch || after > this.#seq || after < oldest - 1) return null;
    return this.#remembered.filter((item) => item.seq > after);
  }

  #gather(change: Change): void {
    this.#gathered.set(keyOf(change), change);
    // An alarm does not wait.
    if (change.type === 'alarm') this.#release();
  }

  #release(): void {
    const now = this.#parts.clock.now();
    const items = [...this.#gathered].map(([key, change]) => this.#item(key, change));
    this.#gathered = new Map();
    this.#remembered.push(...items);
    if (this.#remembered.length > REMEMBERED) this.#remembered = this.#remembered.slice(-REMEMBERED);
    for (const client of this.#clients) {
      if (!client.offer(items, now)) this.#clients.delete(client);
    }
  }

  #item(key: string, change: Change): FeedItem {
    this.#seq += 1;
    const message = numbered(change, this.#seq);
    return { seq: this.#seq, key: change.type === 'alarm' ? null : key, text: JSON.stringify(message) };
  }

  #beat(): void {
    const now = this.#parts.clock.now();
    const beat = this.#heartbeat();
    for (const client of this.#clients) {
      if (!client.offer([beat], now)) this.#clients.delete(client);
    }
  }

  #heartbeat(): FeedItem {
    const { clock, judging, watch } = this.#parts;
    const message: LiveHeartbeat = {
      type: 'heartbeat',
      seq: this.#seq,
      now: clock.now(),
      judging: judging(),
      alarmFloodSince: watch.alarms.floodSince(),
    };
    return { seq: this.#seq, key: 'heartbeat', text: JSON.stringify(message) };
  }

  #snapshot(): LiveSnapshot {
    const { archive, watch, clock, epoch } = this.#parts;
    const shop = archive.shop();
    return {
      type: 'snapshot',
      seq: this.#seq,
      epoch,
      now: clock.now(),
      shop,
      furnaces: archive.furnaces().filter((furnace) => !furnace.archived),
      nodes: [...archive.nodes()],
      channels: archive.channels().filter((channel) => !channel.archived),
      firings: watch.firings.live(),
      alarms: watch.alarms.open().map((row) => worded(row, shop.settings.displayUnit)),
    };
  }
}

function keyOf(change: Change): string {
  switch (change.type) {
    case 'reading':
      return `reading:${change.reading.channel}`;
    case 'firing':
      return `firing:${change.id}`;
    case 'alarm':
      return `alarm:${change.alarm.id}`;
    case 'node':
      return `node:${change.node.id}`;
    case 'channel':
      return `channel:${change.channel.id}`;
    case 'furnace':
      return `furnace:${change.furnace.id}`;
    case 'shop':
      return 'shop';
    default:
      return change satisfies never;
  }
}

function numbered(change: Change, seq: number): LiveChange {
  if (change.type !== 'reading') return { ...change, seq };
  const { channel, ...reading } = change.reading;
  return { type: 'reading', seq, channel, reading };
}
