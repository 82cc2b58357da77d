import type { ChannelReading } from '../contract/reading.ts';
import { type Channel, ChannelName, NodeName, type ShopNode } from '../contract/shop.ts';
import type { ChannelPart, LocatedChannel } from './channels.ts';
import type { Context } from './context.ts';
import type { NodePart } from './nodes.ts';
import type { ReadingPart } from './readings.ts';
import { NO_NODE, type RefusalDraft, type RefusalPart } from './refusals.ts';
import type { Archive, IncomingReading, IntakeWrite } from './types.ts';

/**
 * How many nodes, and channels of one node, may wait for a person. Without these bounds one client that makes
 * up names would fill the disk and bury the real newcomers in the list of offers.
 */
export const MOST_OFFERED_NODES = 256;
export const MOST_OFFERED_CHANNELS = 64;

/** What one commit has gathered so far. */
interface Gathered {
  readonly readings: ChannelReading[];
  duplicates: number;
  readonly nodes: Map<string, ShopNode | null>;
  readonly located: Map<string, LocatedChannel | null>;
  readonly channels: Channel[];
  readonly refusals: RefusalDraft[];
}

/** One payload on its way in: whom its refusals are counted for, and which reasons were counted already. */
interface Arrival {
  readonly write: IntakeWrite;
  readonly keeper: string;
  readonly counted: Set<string>;
}

export interface IntakeParts {
  readonly nodes: NodePart;
  readonly channels: ChannelPart;
  readonly readings: ReadingPart;
  readonly refusals: RefusalPart;
}

export function intakePart(context: Context, parts: IntakeParts): Pick<Archive, 'commitIntake'> {
  const { nodes, channels, readings, refusals } = parts;

  /** A refusal that only the archive can find: counted once for a payload, kept once a minute. */
  function refuse(all: Gathered, arrival: Arrival, reason: string, about: string, detail: string): void {
    const { write, keeper, counted } = arrival;
    if (!counted.has(reason)) refusals.count(keeper, reason);
    counted.add(reason);
    if (!refusals.due(about, reason, write.receivedAt)) return;
    const { node, receivedAt: at, topic = '', payload = new Uint8Array() } = write;
    all.refusals.push({ keeper, node, at, topic, reason, detail, payload });
  }

  function findNode(all: Gathered, write: IntakeWrite): ShopNode | null {
    const known = all.nodes.get(write.node) ?? nodes.byName(write.node) ?? offerNode(all, write);
    all.nodes.set(write.node, known);
    return known;
  }

  function offerNode(all: Gathered, write: IntakeWrite): ShopNode | null {
    const arrival = { write, keeper: NO_NODE, counted: new Set<string>() };
    const said = JSON.stringify(write.node.slice(0, 80));
    if (!NodeName.safeParse(write.node).success) {
      refuse(all, arrival, 'bad-name', NO_NODE, `${said} is not a name that a node can have`);
      return null;
    }
    if (nodes.countOffered() >= MOST_OFFERED_NODES) {
      const detail = `${MOST_OFFERED_NODES} unknown nodes wait to be adopted already; ${said} is not kept`;
      refuse(all, arrival, 'too-many-unknown', NO_NODE, detail);
      return null;
    }
    return nodes.offer(write.node, write.receivedAt);
  }

  function offerChannel(all: Gathered, arrival: Arrival, reading: IncomingReading): LocatedChannel | null {
    const { node, receivedAt } = arrival.write;
    const said = JSON.stringify(reading.name.slice(0, 128));
    if (!ChannelName.safeParse(reading.name).success) {
      refuse(all, arrival, 'bad-name', arrival.keeper, `${said} is not a name that a channel can have`);
      return null;
    }
    if (channels.countOffered(node) >= MOST_OFFERED_CHANNELS) {
      const detail = `${MOST_OFFERED_CHANNELS} unknown channels of this node wait already; ${said} is not kept`;
      refuse(all, arrival, 'too-many-unknown', arrival.keeper, detail);
      return null;
    }
    const { series, channel } = channels.offer(node, reading.name, reading.quantity, receivedAt);
    all.channels.push(channel);
    return { ...channel, series };
  }

  function findChannel(all: Gathered, arrival: Arrival, reading: IncomingReading): LocatedChannel | null {
    const key = `${arrival.write.node}/${reading.name}`;
    const known = all.located.get(key) ?? channels.locate(arrival.write.node, reading.name);
    const found = known ?? offerChannel(all, arrival, reading);
    all.located.set(key, found);
    return found;
  }

  function takeReading(all: Gathered, arrival: Arrival, reading: IncomingReading): void {
    if (!(Number.isSafeInteger(reading.at) && Number.isFinite(reading.value))) {
      const detail = `${reading.name}: value ${reading.value} at ${reading.at} is not a number`;
      refuse(all, arrival, 'bad-value', arrival.keeper, detail);
      return;
    }
    const channel = findChannel(all, arrival, reading);
    if (!channel) return;
    if (channel.quantity !== reading.quantity) {
      const detail = `${reading.name} is a ${channel.quantity} channel and was sent ${reading.quantity}`;
      refuse(all, arrival, 'wrong-quantity', channel.id, detail);
      return;
    }
    if (!channel.adopted) {
      const detail = `${reading.name} is kept, and watched by nobody until it is adopted`;
      refuse(all, arrival, 'unknown-channel', channel.id, detail);
    }
    const { name: _, quantity: __, ...rest } = reading;
    if (readings.insert(channel.series, rest)) all.readings.push({ ...rest, channel: channel.id });
    else all.duplicates += 1;
  }

  function takePayload(all: Gathered, write: IntakeWrite): void {
    const { node: name, receivedAt: at, status } = write;
    const node = findNode(all, write);
    const keeper = node?.id ?? NO_NODE;
    for (const refusal of write.refusals) {
      refusals.count(keeper, refusal.reason);
      all.refusals.push({ ...refusal, keeper, node: name, at });
    }
    if (!node) return;
    if (status) nodes.say(node.id, status, at);
    // A last will is the broker's word, not the node's.
    if (status !== 'offline') nodes.heard(node.id, at);
    const arrival = { write, keeper, counted: new Set<string>() };
    for (const reading of write.readings) takeReading(all, arrival, reading);
  }

  return {
    commitIntake: (writes) =>
      context.write(() => {
        const all: Gathered = {
          readings: [],
          duplicates: 0,
          nodes: new Map(),
          located: new Map(),
          channels: [],
          refusals: [],
        };
        for (const write of writes) takePayload(all, write);
        return {
          readings: all.readings,
          duplicates: all.duplicates,
          refusals: refusals.keep(all.refusals),
          nodes: [...all.nodes.values()].flatMap((node) => (node ? (nodes.node(node.id) ?? []) : [])),
          channels: all.channels.map(({ id }) => channels.channel(id)).filter((found) => found !== null),
        };
      }),
  };
}
