import type { Probe } from '../contract/probe.ts';
import { QUANTITY_FACTS } from '../contract/quantity.ts';
import type { Channel } from '../contract/shop.ts';
import { BASE_UNIT, type Quantity } from '../contract/units.ts';
import { type ChannelRow, channelStatements } from './channel-statements.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { NodePart } from './nodes.ts';
import type { ReadingPart } from './readings.ts';
import type { Archive } from './types.ts';

const NO_DATES = { calibratedAt: null, calibrationDueAt: null, endOfLifeAt: null };

type NewChannel = Parameters<Archive['createChannel']>[0];

export interface LocatedChannel {
  readonly series: number;
  readonly id: string;
  readonly quantity: Quantity;
  readonly adopted: boolean;
}

export interface ChannelPart extends Pick<Archive, 'channels' | 'channel' | 'createChannel' | 'saveChannel'> {
  /** What intake has to know of a channel, and no more: this runs for every payload. */
  readonly locate: (node: string, name: string) => LocatedChannel | null;
  /** Makes a channel that nobody has accepted yet, with the usual facts of its quantity. */
  readonly offer: (node: string, name: string, quantity: Quantity, at: number) => LocatedChannel;
  readonly countOffered: (node: string) => number;
}

export function channelPart(context: Context, nodes: NodePart, readings: ReadingPart): ChannelPart {
  const { ids, write } = context;
  const statements = channelStatements(context);

  function toChannel(row: ChannelRow): Channel {
    const { series, ...rest } = row;
    return {
      ...rest,
      probe: row.probe === null ? null : fromJson<Probe>(row.probe),
      adopted: row.adopted === 1,
      archived: row.archived === 1,
      baseUnit: BASE_UNIT[row.quantity],
      latest: readings.latestOf(series),
    };
  }

  function channel(id: string): Channel | null {
    const row = statements.byId.get(id);
    return row ? toChannel(row) : null;
  }

  function add(draft: NewChannel, adopted: boolean, at: number): LocatedChannel {
    const id = ids();
    const flags = { adopted: Number(adopted), archived: 0 };
    const probe = probeText(draft.probe);
    const series = statements.insert.get({ ...NO_DATES, ...draft, ...flags, probe, id, createdAt: at });
    if (series === undefined) throw new ArchiveError('fault', 'a channel was inserted without a number');
    return { series, id, quantity: draft.quantity, adopted };
  }

  /**
   * What was kept under another quantity has another base unit. Nobody had accepted it, so it is set aside
   * under its old number, and the channel begins again; an accepted channel's quantity is fixed.
   */
  function changeQuantity(kept: Channel): void {
    if (kept.adopted) {
      throw new ArchiveError(
        'conflict',
        `channel ${kept.node}/${kept.name} keeps ${kept.quantity} readings: its quantity is fixed, make another channel`,
      );
    }
    statements.renumber.run(kept.id);
  }

  function saveChannel(changed: Channel): Channel {
    const kept = channel(changed.id);
    if (kept && kept.quantity !== changed.quantity) changeQuantity(kept);
    const flags = { adopted: Number(changed.adopted), archived: Number(changed.archived) };
    const probe = probeText(changed.probe);
    mustChange(statements.update.run({ ...changed, ...flags, probe }).changes, 'channel', changed.id);
    return channel(changed.id) ?? changed;
  }

  /** A channel may have spoken before a person names it: then it is accepted, with all it has said. */
  function createChannel(draft: NewChannel, at: number): Channel {
    nodes.accept(draft.node, at);
    const row = statements.named.get(draft.node, draft.name);
    if (row?.adopted === 1) {
      throw new ArchiveError('conflict', `there is already a channel ${draft.node}/${draft.name}`);
    }
    if (row) return saveChannel({ ...toChannel(row), ...draft, adopted: true });
    const made = channel(add(draft, true, at).id);
    if (!made) throw new ArchiveError('fault', 'a channel was inserted and is not there');
    return made;
  }

  return {
    channels: () => statements.all.all().map(toChannel),
    channel,
    createChannel: (draft, at) => write(() => createChannel(draft, at)),
    saveChannel: (changed) => write(() => saveChannel(changed)),
    locate(node, name) {
      const row = statements.located.get(node, name);
      return row ? { ...row, adopted: row.adopted === 1 } : null;
    },
    offer: (node, name, quantity, at) => add(newcomer(node, name, quantity), false, at),
    countOffered: (node) => statements.offered.get(node) ?? 0,
  };
}

function probeText(probe: Probe | null | undefined): string | null {
  return probe ? JSON.stringify(probe) : null;
}

function newcomer(node: string, name: string, quantity: Quantity): NewChannel {
  return {
    node,
    name,
    label: '',
    quantity,
    unit: null,
    role: 'other',
    furnaceId: null,
    possibleLow: null,
    possibleHigh: null,
    staleAfterSeconds: QUANTITY_FACTS[quantity].staleAfterSeconds,
  };
}
