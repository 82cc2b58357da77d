/** What the behaviours of the sensors make of a node's readings. */
import { channelsOf, type Fitting, type NodeName, unitOf } from '../node-names.ts';
import type { NodeSample } from '../wire/pack.ts';
import { type Behaviour, isActive, named } from './behaviour.ts';

/** An open input drives a 14-bit quarter-degree chip to its end: 8191 x 0.25 °C. */
export const OPEN_CIRCUIT_CELSIUS = 2047.75;

/** Turns what the sensors show into what a node reports, faults and wrong clock included. */
export class SensorFaults {
  readonly #behaviours: readonly Behaviour[];
  readonly #fittings: readonly Fitting[];
  readonly #frozen = new Map<Behaviour, number>();

  constructor(behaviours: readonly Behaviour[], fittings: readonly Fitting[] = []) {
    this.#behaviours = behaviours;
    this.#fittings = fittings;
  }

  /** The sample that leaves the node at `atMs` of true time. */
  report(
    node: NodeName,
    shown: Readonly<Record<string, number>>,
    atMs: number,
    elapsedSeconds: number,
  ): NodeSample {
    const active = this.#behaviours.filter((each) => isActive(each, elapsedSeconds));
    const values = channelsOf(node, this.#fittings).map((name) => {
      const worn = wear(active, node, name, shown[name] ?? Number.NaN, elapsedSeconds);
      const value = this.#faulty(active, node, name, worn);
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
    for (const each of named(active, 'flat-sensor')) {
      if (each.node === node && each.channel === channel) value = each.value;
    }
    // A broken wire comes last: a frozen reading of a wire that is no longer there cannot be.
    for (const each of named(active, 'thermocouple-break')) {
      if (each.node !== node || each.channel !== channel) continue;
      value = each.mode === 'high' ? OPEN_CIRCUIT_CELSIUS : Number.NaN;
    }
    return value;
  }
}

/** What age does to a cell: it answers with less, its zero walks, its range ends. */
function wear(
  active: readonly Behaviour[],
  node: NodeName,
  channel: string,
  shown: number,
  elapsedSeconds: number,
): number {
  const isMine = (each: { readonly node: NodeName; readonly channel: string }) =>
    each.node === node && each.channel === channel;
  let value = shown;
  for (const each of named(active, 'aged-sensor')) if (isMine(each)) value *= 1 - each.lostShare;
  for (const each of named(active, 'drifting-sensor')) {
    if (isMine(each)) value += (each.perHour * (elapsedSeconds - each.startSeconds)) / 3600;
  }
  for (const each of named(active, 'saturated-sensor')) {
    if (isMine(each)) value = Math.min(value, each.ceiling);
  }
  return value;
}
