import { ChannelName } from '../contract/channel-name.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { NodeName, type ShopNode } from '../contract/shop.ts';
import type { ChannelPart, LocatedChannel } from './channels.ts';
import type { NodePart } from './nodes.ts';
import { type ReadingPart, withoutMinusZero } from './readings.ts';
import { NO_NODE, type RefusalDraft, type RefusalPart } from './refusals.ts';
import type { IncomingReading, IntakeCommit, IntakeWrite } from './types.ts';

/**
 * How many nodes, and channels of one node, may wait for a person. Without these bounds one client that makes
 * up names would fill the disk and bury the real newcomers in the list of offers.
 */
export const MOST_OFFERED_NODES = 256;
export const MOST_OFFERED_CHANNELS = 64;

export interface IntakeParts {
  readonly nodes: NodePart;
  readonly channels: ChannelPart;
  readonly readings: ReadingPart;
  readonly refusals: RefusalPart;
}

/** One payload on its way in: whom its refusals are counted for, and which reasons were counted already. */
interface Arrival {
  readonly write: IntakeWrite;
  readonly keeper: string;
  readonly counted: Set<string>;
}

function arrivalOf(write: IntakeWrite, keeper: string): Arrival {
  return { write, keeper, counted: new Set() };
}

/** A name as it can be shown in a sentence: quoted, escaped, and no longer than a name may be. */
function quoted(name: string): string {
  return JSON.stringify(name.slice(0, 128));
}

/** The payloads of one transaction, taken one by one. Made for that transaction and dropped with it. */
export class IntakeBatch {
  readonly #parts: IntakeParts;
  readonly #readings: ChannelReading[] = [];
  #duplicates = 0;
  readonly #nodes = new Map<string, ShopNode>();
  readonly #located = new Map<string, LocatedChannel>();
  readonly #offered: string[] = [];
  /** Node id and when it was last heard: written once a node, however many payloads came. */
  readonly #heard = new Map<string, number>();
  readonly #refusals: RefusalDraft[] = [];

  constructor(parts: IntakeParts) {
    this.#parts = parts;
  }

  take(write: IntakeWrite): void {
    const { nodes, refusals } = this.#parts;
    const node = this.#findNode(write);
    const keeper = node?.id ?? NO_NODE;
    for (const refusal of write.refusals) {
      refusals.count(keeper, refusal.reason);
      this.#refusals.push({ ...refusal, keeper, node: write.node, at: write.receivedAt });
    }
    if (!node) return;
    if (write.status) nodes.say(node.id, write.status, write.receivedAt);
    // A last will is the broker's word, not the node's.
    if (write.status !== 'offline') this.#hear(node.id, write.receivedAt);
    const arrival = arrivalOf(write, keeper);
    for (const reading of write.readings) this.#takeReading(arrival, reading);
  }

  /** What all of it changed, as it stands at the end of the transaction. */
  finish(): IntakeCommit {
    const { nodes, channels, refusals } = this.#parts;
    for (const [id, at] of this.#heard) nodes.hear(id, at);
    return {
      readings: this.#readings,
      duplicates: this.#duplicates,
      refusals: refusals.keep(this.#refusals),
      nodes: [...this.#nodes.keys()].map(nodes.byName).filter((node) => node !== null),
      channels: this.#offered.map(channels.channel).filter((channel) => channel !== null),
    };
  }

  #hear(node: string, at: number): void {
    this.#heard.set(node, Math.max(at, this.#heard.get(node) ?? 0));
  }

  #takeReading(arrival: Arrival, { name, quantity, ...given }: IncomingReading): void {
    const reading = withoutMinusZero(given);
    if (!(Number.isSafeInteger(reading.at) && Number.isFinite(reading.value))) {
      const detail = `${quoted(name)}: the value ${reading.value} at ${reading.at} is not a number`;
      this.#refuse(arrival, 'bad-value', arrival.keeper, detail);
      return;
    }
    const channel = this.#findChannel(arrival, name, quantity);
    if (!channel) return;
    if (channel.quantity !== quantity) {
      const detail = `${quoted(name)} is a ${channel.quantity} channel and was sent ${quantity}`;
      this.#refuse(arrival, 'wrong-quantity', channel.id, detail);
      return;
    }
    if (!channel.adopted) {
      const detail = `${quoted(name)} is kept, and watched by nobody until it is adopted`;
      this.#refuse(arrival, 'unknown-channel', channel.id, detail);
    }
    const isNew = this.#parts.readings.insert(channel.series, reading);
    if (isNew) this.#readings.push({ ...reading, channel: channel.id });
    else this.#duplicates += 1;
  }

  /** A refusal that only the archive can find: counted once for a payload, kept once a minute. */
  #refuse({ write, keeper, counted }: Arrival, reason: string, about: string, detail: string): void {
    const { refusals } = this.#parts;
    if (!counted.has(reason)) refusals.count(keeper, reason);
    counted.add(reason);
    if (!refusals.due(about, reason, write.receivedAt)) return;
    const { node, receivedAt: at, topic = '', payload = new Uint8Array() } = write;
    this.#refusals.push({ keeper, node, at, topic, reason, detail, payload });
  }

  #findNode(write: IntakeWrite): ShopNode | null {
    const known = this.#nodes.get(write.node) ?? this.#parts.nodes.byName(write.node);
    const found = known ?? this.#offerNode(write);
    if (found) this.#nodes.set(write.node, found);
    return found;
  }

  #offerNode(write: IntakeWrite): ShopNode | null {
    const { nodes } = this.#parts;
    const nobody = arrivalOf(write, NO_NODE);
    // No node at all: intake has already said why, and counted it.
    if (write.node === '' && write.readings.length === 0) return null;
    if (!NodeName.safeParse(write.node).success) {
      this.#refuse(nobody, 'bad-name', NO_NODE, `${quoted(write.node)} is not a name that a node can have`);
      return null;
    }
    if (nodes.countOffered() >= MOST_OFFERED_NODES) {
      const detail = `${MOST_OFFERED_NODES} unknown nodes wait to be adopted: ${quoted(write.node)} is not kept`;
      this.#refuse(nobody, 'too-many-unknown', NO_NODE, detail);
      return null;
    }
    return nodes.offer(write.node, write.receivedAt);
  }

  #findChannel(arrival: Arrival, name: string, quantity: IncomingReading['quantity']): LocatedChannel | null {
    const { node } = arrival.write;
    const key = `${node}/${name}`;
    const known = this.#located.get(key) ?? this.#parts.channels.locate(node, name);
    const found = known ?? this.#offerChannel(arrival, name, quantity);
    if (found) this.#located.set(key, found);
    return found;
  }

  #offerChannel(
    arrival: Arrival,
    name: string,
    quantity: IncomingReading['quantity'],
  ): LocatedChannel | null {
    const { channels } = this.#parts;
    const { node, receivedAt } = arrival.write;
    if (!ChannelName.safeParse(name).success) {
      const detail = `${quoted(name)} is not a name that a channel can have`;
      this.#refuse(arrival, 'bad-name', arrival.keeper, detail);
      return null;
    }
    if (channels.countOffered(node) >= MOST_OFFERED_CHANNELS) {
      const detail = `${MOST_OFFERED_CHANNELS} unknown channels of this node wait: ${quoted(name)} is not kept`;
      this.#refuse(arrival, 'too-many-unknown', arrival.keeper, detail);
      return null;
    }
    const offered = channels.offer(node, name, quantity, receivedAt);
    this.#offered.push(offered.id);
    return offered;
  }
}
