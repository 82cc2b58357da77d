/** What a poor network does to messages, and when a node is cut off. */
import { type Behaviour, isActive, named } from '../behaviours/behaviour.ts';
import type { NodeName } from '../node-names.ts';
import { type Random, seededRandom } from '../random.ts';

/** True while a behaviour keeps the node off the network. */
export function isCutOff(behaviours: readonly Behaviour[], node: NodeName, elapsedSeconds: number): boolean {
  return named(behaviours, 'node-drop').some((each) => each.node === node && isActive(each, elapsedSeconds));
}

/** The longest that a message is overtaken by others. */
const MOST_OVERTAKEN = 3;

interface Held {
  readonly message: string;
  passes: number;
}

/** Sends some messages twice and lets some be overtaken; loses none. */
export class LinkEffects {
  readonly #behaviours: readonly Behaviour[];
  readonly #node: NodeName;
  readonly #random: Random;
  #held: Held[] = [];

  constructor(behaviours: readonly Behaviour[], node: NodeName, seed: number) {
    this.#behaviours = behaviours;
    this.#node = node;
    this.#random = seededRandom(seed, `${node}/link`);
  }

  /** Takes one message in; gives those that leave now, in the order in which they leave. */
  pass(message: string, elapsedSeconds: number): string[] {
    const mine = named(this.#behaviours, 'duplicate-reorder').filter(
      (each) => each.node === this.#node && isActive(each, elapsedSeconds),
    );
    const effect = mine[0];
    const overtaken = this.#overtaken(effect === undefined);
    if (effect === undefined) return [...overtaken, message];
    // Both draws happen every time, so that one share does not change the other's luck.
    const isTwice = this.#random.uniform() < effect.duplicateShare;
    const isHeld = this.#random.uniform() < effect.reorderShare;
    const copies = isTwice ? [message, message] : [message];
    if (!isHeld) return [...copies, ...overtaken];
    const passes = 1 + Math.floor(this.#random.uniform() * MOST_OVERTAKEN);
    this.#held.push(...copies.map((copy) => ({ message: copy, passes })));
    return overtaken;
  }

  #overtaken(everything: boolean): string[] {
    for (const each of this.#held) each.passes -= 1;
    const due = this.#held.filter((each) => everything || each.passes <= 0);
    this.#held = this.#held.filter((each) => !due.includes(each));
    return due.map((each) => each.message);
  }
}
