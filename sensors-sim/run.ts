/**
 * The simulated shop without a network or a clock: what a hub would receive, as
 * an ordered stream. Hours come out in a fraction of a second.
 */
import type { Behaviour } from './behaviours/behaviour.ts';
import { Engine } from './engine.ts';
import { SimError } from './errors.ts';
import { type Fitting, NODE_NAMES, type NodeName } from './node-names.ts';
import { ListedAgenda } from './operators/agenda.ts';
import type { FurnaceEvent, PlannedFiring } from './operators/firing-desk.ts';
import type { CylinderStart } from './plant/cylinder.ts';
import type { TemperatureController } from './plant/temperature-controller.ts';
import type { Label, Truth } from './truth/truth.ts';
import { Outbox } from './wire/outbox.ts';
import { readingsTopic, statusTopic } from './wire/pack.ts';

/** What to simulate. */
export interface SimulateOptions {
  /** Same seed, same bytes. */
  readonly seed: number;
  readonly startMs: number;
  readonly seconds: number;
  /** Length of a step, at most the publishing interval. Default 1. */
  readonly stepSeconds?: number;
  /** A whole number of steps. Default 1. */
  readonly publishEverySeconds?: number;
  readonly furnacePlan: readonly PlannedFiring[];
  readonly behaviours?: readonly Behaviour[];
  readonly cylinder?: CylinderStart;
  /** Messages that a node holds while it is cut off. Default 3600. */
  readonly bufferLimit?: number;
  /** Messages that a returning node sends in one publishing interval. Default 200. */
  readonly backfillBurst?: number;
  readonly ovenController?: TemperatureController;
  /** What the shop has beyond the usual channels. Default nothing. */
  readonly fittings?: readonly Fitting[];
}

/** One message as the hub receives it. */
export interface Emission {
  /** True time of arrival, epoch ms. The readings carry the node's own time. */
  readonly atMs: number;
  readonly topic: string;
  readonly payload: string;
  readonly qos: 0 | 1;
  readonly retain: boolean;
}

/** The stream, and beside it what no sensor knows. The truth fills up as the stream is read. */
export interface Simulation extends Iterable<Emission> {
  readonly truth: readonly Truth[];
  /** Instants of the truth: overshoots, the core's arrival, behaviours. */
  readonly labels: readonly Label[];
  readonly events: readonly FurnaceEvent[];
  /** Messages given up by each node because its buffer was full. */
  readonly dropped: ReadonlyMap<NodeName, number>;
}

/**
 * Prepares a simulation; nothing is computed until it is read. It can be read once.
 *
 * @throws SimError `bad-option` for times that do not fit each other
 */
export function simulate(options: SimulateOptions): Simulation {
  const every = stepsPerPublish(options);
  const { furnacePlan, ...rest } = options;
  const engine = new Engine({ ...rest, agenda: new ListedAgenda(furnacePlan) });
  const truth: Truth[] = [];
  const nodes = NODE_NAMES.map((node) => new OfflineNode(node, options.bufferLimit ?? 3600));
  const burst = options.backfillBurst ?? 200;
  function* run(): Generator<Emission> {
    const untilMs = options.startMs + options.seconds * 1000;
    for (let step = 1; engine.shop.nowMs < untilMs; step += 1) {
      engine.step();
      if (step % every !== 0) continue;
      truth.push(engine.shop.truth());
      const outputs = engine.outputs();
      for (const node of nodes) {
        const mine = outputs.find((each) => each.node === node.name);
        if (mine !== undefined) yield* node.send(mine.payloads, mine.linked, engine.shop.nowMs, burst);
      }
    }
  }
  const stream = run();
  return {
    [Symbol.iterator]: () => stream,
    truth,
    labels: engine.shop.labels,
    events: engine.shop.events,
    get dropped() {
      return new Map(nodes.map((node) => [node.name, node.dropped] as const));
    },
  };
}

function stepsPerPublish(options: SimulateOptions): number {
  const steps = (options.publishEverySeconds ?? 1) / (options.stepSeconds ?? 1);
  if (Number.isInteger(steps) && steps >= 1) return steps;
  const message = `Publishing every ${options.publishEverySeconds ?? 1} s is not a whole number of ${options.stepSeconds ?? 1} s steps`;
  throw new SimError('bad-option', message);
}

/** A node's buffer and status without a network: an acknowledgement comes at once. */
class OfflineNode {
  readonly name: NodeName;
  readonly #outbox: Outbox<string>;
  #linked = false;

  constructor(name: NodeName, limit: number) {
    this.name = name;
    this.#outbox = new Outbox<string>(limit);
  }

  get dropped(): number {
    return this.#outbox.dropped;
  }

  *send(payloads: readonly string[], linked: boolean, atMs: number, burst: number): Generator<Emission> {
    for (const payload of payloads) this.#outbox.push(payload);
    if (linked !== this.#linked) {
      this.#linked = linked;
      yield {
        atMs,
        topic: statusTopic(this.name),
        payload: linked ? 'online' : 'offline',
        qos: 1,
        retain: true,
      };
    }
    for (let sent = 0; linked && sent < burst; sent += 1) {
      const next = this.#outbox.take();
      if (next === null) return;
      this.#outbox.acknowledge(next.sequence);
      yield { atMs, topic: readingsTopic(this.name), payload: next.message, qos: 1, retain: false };
    }
  }
}
