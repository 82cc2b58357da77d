import type { Archive, IntakeCommit } from '../archive/types.ts';
import type { Finding } from '../contract/alarm.ts';
import type { FiringDetail, FiringDraft } from '../contract/firing.ts';
import type { LoadChange } from '../contract/piece.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { NodeStatus, ShopNode } from '../contract/shop.ts';
import type { Clock } from '../time/clock.ts';
import { withoutEchoes } from './air-echo.ts';
import { AlarmDesk } from './alarm-desk.ts';
import type { ChangeBus } from './changes.ts';
import { FiringDesk } from './firing-desk.ts';
import { TICK_MS } from './firing-track.ts';
import { loadChangeText, loadResolver } from './load.ts';
import { ShopWatch } from './shop-watch.ts';

/** A reading this much behind the clock is late for firings that are already over. */
const PAST_MS = 5_000;
const KEEP_MS = 60_000;
/** What nodes take to find a hub that has come back. Common practice, no source. */
const SETTLING_MS = 15_000;
const TELL_NODE_MS = 5_000;

interface WatchParts {
  readonly archive: Archive;
  readonly clock: Clock;
  readonly bus: ChangeBus;
  readonly newId: () => string;
  readonly simulated: boolean;
  readonly onFault: (fault: unknown) => void;
  /** What others than the judges find: that people are not reached. */
  readonly alsoFound?: () => readonly Finding[];
}

interface NodeTold {
  readonly status: NodeStatus;
  readonly refusals: number;
  readonly toldAt: number;
}

interface Past {
  from: number;
  to: number;
}

/**
 * Stands watch: carries the judges on as readings are committed and as time passes, keeps the alarm book, and
 * tells the live feed. It holds no judgement of its own; everything it knows can be replayed from the archive.
 */
export class Watch {
  readonly firings: FiringDesk;
  readonly alarms: AlarmDesk;
  readonly #parts: WatchParts;
  readonly #shop: ShopWatch;
  readonly #newest = new Map<string, number>();
  readonly #nodes = new Map<string, NodeTold>();
  readonly #past = new Map<string, Past>();
  #startedAt = Number.NEGATIVE_INFINITY;
  #stops: (() => void)[] = [];

  constructor(parts: WatchParts) {
    this.#parts = parts;
    const { archive, bus, clock } = parts;
    this.firings = new FiringDesk({
      archive,
      bus,
      simulated: parts.simulated,
      resolveLoad: loadResolver(archive),
    });
    this.#shop = new ShopWatch(archive, clock.now(), (row) => this.firings.judgementNow(row));
    this.alarms = new AlarmDesk({ archive, bus, newId: parts.newId, now: clock.now() });
  }

  start(): void {
    const { clock } = this.#parts;
    this.#startedAt = clock.now();
    this.firings.resume(clock.now());
    this.#stops = [
      clock.every(TICK_MS, () => this.#guard(() => this.tick())),
      clock.every(KEEP_MS, () => this.#guard(() => this.firings.keep())),
    ];
  }

  stop(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
    this.firings.keep();
  }

  /** Told by intake after each commit, before the acknowledgements leave. */
  committed(commit: IntakeCommit): void {
    const now = this.#parts.clock.now();
    for (const reading of commit.readings) this.#take(reading, now);
    for (const node of commit.nodes) this.#takeNode(node, now);
    for (const channel of commit.channels) this.#parts.bus.tell({ type: 'channel', channel });
  }

  tick(): void {
    const now = this.#parts.clock.now();
    this.#flushPast();
    const shop = withoutEchoes(this.#shop.findings(now), this.alarms.open());
    const others = this.#parts.alsoFound?.() ?? [];
    const findings = [...shop, ...this.firings.advance(now), ...others];
    this.alarms.judge(now - this.#startedAt < SETTLING_MS ? this.#settled(findings) : findings, now);
  }

  /** Right after a start no node has had time to connect: blindness that is new waits, what stands stays. */
  #settled(findings: readonly Finding[]): readonly Finding[] {
    const open = this.alarms.open();
    return findings.filter(
      ({ kind, subject }) =>
        !kind.startsWith('not-watching') ||
        open.some((alarm) => alarm.kind === kind && alarm.subject === subject),
    );
  }

  startFiring(draft: FiringDraft): FiringDetail {
    const now = this.#parts.clock.now();
    const detail = this.firings.start(draft, now);
    if (detail.status === 'running') {
      const { id: firingId, furnaceId, watchedChannels: watched } = detail;
      this.#shop.event({ kind: 'firing-running', at: now, firingId, furnaceId, watched });
    }
    return detail;
  }

  /** Changes what lies in a running firing and notes it in its journal. */
  changeLoad(id: string, { pieces, by }: LoadChange): FiringDetail {
    const now = this.#parts.clock.now();
    const { before, after } = this.firings.changeLoad(id, pieces, now);
    const text = loadChangeText(before.pieces, after.pieces);
    this.#parts.archive.addNote({ firingId: id, at: now, text, by, createdAt: now });
    return after;
  }

  finishFiring(id: string, at: number | undefined, abandoned: boolean): FiringDetail {
    const now = this.#parts.clock.now();
    const detail = this.firings.finish(id, Math.min(at ?? now, now), abandoned);
    this.#shop.event({ kind: 'firing-over', at: now, firingId: id });
    this.tick();
    return detail;
  }

  /** The air as the judges see it, for the page about it. */
  air(now: number): ReturnType<ShopWatch['air']> {
    return this.#shop.air(now);
  }

  /** The gas as the judge sees it. */
  gas(now: number): ReturnType<ShopWatch['gas']> {
    return this.#shop.gas(now);
  }

  /** A person noted a fill, or took one back, for that instant. */
  gasChanged(at: number): void {
    this.#shop.gasChanged(at);
  }

  /** Furnaces, channels or limits were changed by a person. */
  setupChanged(): void {
    const now = this.#parts.clock.now();
    this.firings.restart(now);
    this.#shop.restart(now);
  }

  #take(reading: ChannelReading, now: number): void {
    this.firings.learned(reading);
    this.#shop.learned(reading);
    if (reading.at < now - PAST_MS) this.#rememberPast(reading);
    const newest = this.#newest.get(reading.channel) ?? Number.NEGATIVE_INFINITY;
    if (reading.at < newest) return;
    this.#newest.set(reading.channel, reading.at);
    this.#parts.bus.tell({ type: 'reading', reading });
  }

  /** A node speaks every second; what is told is what changed about it, and now and then that it spoke. */
  #takeNode(node: ShopNode, now: number): void {
    const before = this.#nodes.get(node.id);
    const refusals = Object.values(node.refused).reduce((sum, count) => sum + count, 0);
    if (before?.status !== node.status) {
      this.#shop.event({ kind: 'node-status', at: now, node: node.name, status: node.status });
    }
    const changed = before?.status !== node.status || before.refusals !== refusals;
    if (!changed && now - before.toldAt < TELL_NODE_MS) return;
    this.#nodes.set(node.id, { status: node.status, refusals, toldAt: now });
    this.#parts.bus.tell({ type: 'node', node });
  }

  #rememberPast(reading: ChannelReading): void {
    const past = this.#past.get(reading.channel);
    if (!past) this.#past.set(reading.channel, { from: reading.at, to: reading.at });
    else {
      past.from = Math.min(past.from, reading.at);
      past.to = Math.max(past.to, reading.at);
    }
  }

  #flushPast(): void {
    for (const [channel, { from, to }] of this.#past) this.firings.learnedPast(channel, from, to);
    this.#past.clear();
  }

  /** A judge that fails must not take the hub down, nor fail quietly. */
  #guard(run: () => void): void {
    try {
      run();
    } catch (fault) {
      this.#parts.onFault(fault);
    }
  }
}
