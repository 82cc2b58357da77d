/** The shop with its nodes: moves time on and says what each node reads and whether it is on the network. */
import { type Behaviour, requireFitted } from './behaviours/behaviour.ts';
import { SensorFaults } from './behaviours/sensor-faults.ts';
import { SimError } from './errors.ts';
import { type Fitting, NODE_NAMES, type NodeName } from './node-names.ts';
import { Shop, type ShopOptions } from './shop.ts';
import { isCutOff, LinkEffects } from './wire/link-effects.ts';
import { formatPack, type NodeSample } from './wire/pack.ts';

/** What an engine is built from. */
export interface EngineOptions extends ShopOptions {
  /** Length of a step, seconds; the shop divides it further. Default 1. */
  readonly stepSeconds?: number;
  /** What the shop has beyond the usual channels. Default nothing. */
  readonly fittings?: readonly Fitting[];
}

/** What one node has to do after a step. */
export interface NodeOutput {
  readonly node: NodeName;
  /** False while a behaviour keeps the node off the network. */
  readonly linked: boolean;
  readonly payloads: readonly string[];
}

/** Shop, sensor faults and links under one clock. */
export class Engine {
  readonly shop: Shop;
  readonly stepSeconds: number;
  readonly #behaviours: readonly Behaviour[];
  readonly #faults: SensorFaults;
  readonly #links: ReadonlyMap<NodeName, LinkEffects>;

  /**
   * @throws SimError `bad-option` for a step that is not a whole number of milliseconds above 0, `bad-behaviour`
   *   for a fault of a sensor that the shop is not fitted with
   */
  constructor(options: EngineOptions) {
    const stepSeconds = options.stepSeconds ?? 1;
    if (!(stepSeconds > 0 && Number.isInteger(stepSeconds * 1000))) {
      throw new SimError('bad-option', `A step is whole milliseconds above 0, not ${stepSeconds} s`);
    }
    this.stepSeconds = stepSeconds;
    this.#behaviours = options.behaviours ?? [];
    this.shop = new Shop(options);
    const fittings = options.fittings ?? [];
    requireFitted(this.#behaviours, fittings);
    this.#faults = new SensorFaults(this.#behaviours, fittings);
    this.#links = new Map(
      NODE_NAMES.map((node) => [node, new LinkEffects(this.#behaviours, node, options.seed)] as const),
    );
  }

  /** Moves on by one step. */
  step(): void {
    this.shop.step(this.stepSeconds);
  }

  /** What the nodes read now, faults included. */
  samples(): NodeSample[] {
    const { nowMs, elapsedSeconds } = this.shop;
    return NODE_NAMES.map((node) => this.#faults.report(node, this.shop.sense(node), nowMs, elapsedSeconds));
  }

  /** What the nodes send now, link troubles included. */
  outputs(): NodeOutput[] {
    const { elapsedSeconds } = this.shop;
    return this.samples().map((sample) => ({
      node: sample.node,
      linked: !isCutOff(this.#behaviours, sample.node, elapsedSeconds),
      payloads: this.#links.get(sample.node)?.pass(formatPack([sample]), elapsedSeconds) ?? [],
    }));
  }
}
