/** The shop on a running clock: first its past as a backfill, then second by second. */
import type { Behaviour } from './behaviours/behaviour.ts';
import { Engine } from './engine.ts';
import { type HistoryOptions, plannedHistory } from './history.ts';
import { type Fitting, NODE_NAMES, type NodeName } from './node-names.ts';
import { EndlessAgenda } from './operators/agenda.ts';
import type { FurnaceEvent } from './operators/firing-desk.ts';
import { seededRandom } from './random.ts';
import type { Label, Truth } from './truth/truth.ts';
import { formatPack, type NodeSample } from './wire/pack.ts';
import type { Uplink } from './wire/uplink.ts';

/** What a live shop is built from. */
export interface LiveOptions {
  readonly seed: number;
  /** When the shop goes live, epoch ms, whole seconds. */
  readonly liveMs: number;
  /** How many seconds the shop lives through in one second of the clock. */
  readonly speed: number;
  readonly behaviours: readonly Behaviour[];
  readonly history: HistoryOptions;
  /** Spacing of the readings of the past, whole seconds. */
  readonly historyEverySeconds: number;
  readonly uplinks: ReadonlyMap<NodeName, Uplink>;
  /** What the shop has beyond the usual channels. Default nothing. */
  readonly fittings?: readonly Fitting[];
}

/** Samples in one pack of the past. */
const SAMPLES_PER_PACK = 20;

/** Runs the shop for as long as somebody calls `advance`. */
export class LiveShop {
  readonly #options: LiveOptions;
  readonly #engine: Engine;

  constructor(options: LiveOptions) {
    this.#options = options;
    const { seed, liveMs, behaviours } = options;
    const { startMs, firings } = plannedHistory(seed, liveMs, options.history);
    const agenda = new EndlessAgenda(firings, seededRandom(seed, 'invented firings'));
    this.#engine = new Engine({
      seed,
      startMs,
      agenda,
      behaviours,
      behavioursFromMs: liveMs,
      fittings: options.fittings ?? [],
    });
  }

  /** What the operators have done so far, the past included. */
  get events(): readonly FurnaceEvent[] {
    return this.#engine.shop.events;
  }

  /** What truly happened so far. */
  get labels(): readonly Label[] {
    return this.#engine.shop.labels;
  }

  /** The truth now, for the side channel. */
  truth(): Truth {
    return this.#engine.shop.truth();
  }

  get nowMs(): number {
    return this.#engine.shop.nowMs;
  }

  /** Lives through the past and hands it to the uplinks in packs of many samples. */
  publishHistory(): void {
    const { liveMs, historyEverySeconds } = this.#options;
    const pending = new Map<NodeName, NodeSample[]>(NODE_NAMES.map((node) => [node, []]));
    for (let second = 1; this.nowMs < liveMs; second += 1) {
      this.#engine.step();
      if (second % historyEverySeconds !== 0) continue;
      for (const sample of this.#engine.samples()) this.#collect(pending, sample);
    }
    for (const [node, samples] of pending) this.#flush(node, samples);
  }

  #collect(pending: Map<NodeName, NodeSample[]>, sample: NodeSample): void {
    const samples = pending.get(sample.node) ?? [];
    samples.push(sample);
    if (samples.length >= SAMPLES_PER_PACK) this.#flush(sample.node, samples);
  }

  #flush(node: NodeName, samples: NodeSample[]): void {
    if (samples.length === 0) return;
    this.#options.uplinks.get(node)?.send(formatPack(samples.splice(0)));
  }

  /** Lives on until the shop's clock has caught up with `elapsedMs` of the outer clock since it went live. */
  advance(elapsedMs: number): void {
    const { liveMs, speed, uplinks } = this.#options;
    const untilMs = liveMs + elapsedMs * speed;
    while (this.nowMs + this.#engine.stepSeconds * 1000 <= untilMs) {
      this.#engine.step();
      for (const output of this.#engine.outputs()) {
        const uplink = uplinks.get(output.node);
        if (uplink === undefined) continue;
        uplink.setLinked(output.linked);
        for (const payload of output.payloads) uplink.send(payload);
      }
    }
  }
}
