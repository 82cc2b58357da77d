/** What the behaviours of the sensors make of a node's readings. */
import { channelsOf, type NodeName, unitOf } from '../node-names.ts';
import type { NodeSample } from '../wire/pack.ts';
import { type Behaviour, isActive, named } from './behaviour.ts';

/** An open input drives a 14-bit quarter-degree chip to its end: 8191 x 0.25 °C. */
export const OPEN_CIRCUIT_CELSIUS = 2047.75;

/** Turns what the sensors show into what a node reports, faults and wrong clock included. */
export class SensorFaults {
  readonly #behaviours: readonly Behaviour[];
  readonly #frozen = new Map<Behaviour, number>();

  constructor(behaviours: readonly Behaviour[]) {
    this.#behaviours = behaviours;
  }

  /** The sample that leaves the node at `atMs` of true time. */
  report(node: NodeName, shown: readonly number[], atMs: number, elapsedSeconds: number): NodeSample {
    const active = this.#behaviours.filter((each) => isActive(each, elapsedSeconds));
    const values = channelsOf(node).map((name, index) => {
      const value = this.#faulty(active, node, name, shown[index] ?? Number.NaN);
      return { name, unit: unitOf(node, name) ?? '', value };
    });
    const skew = named(active, 'clock-skew').filter((each) => each.node === node);
    const offsetSeconds = skew.reduce((sum, each) => sum + each.offsetSeconds, 0);
    return { node, atMs: atMs + Math.round(offsetSeconds * 1000), values };
  }

  #faulty(active: readonly Behaviour[], node: NodeName, channel: string, shown: number): number {
    let value = shown;
    for (const each of named(active, 'frozen-sensor')) {
      if (each.node !== node || each.channel !== channel) continue;
      const held = this.#frozen.get(each) ?? value;
      this.#frozen.set(each, held);
      value = held;
    }
    // A broken wire comes last: a frozen reading of a wire that is no longer there cannot be.
    for (const each of named(active, 'thermocouple-break')) {
      if (each.node !== node || each.channel !== channel) continue;
      value = each.mode === 'high' ? OPEN_CIRCUIT_CELSIUS : Number.NaN;
    }
    return value;
  }
}
