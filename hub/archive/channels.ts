import { QUANTITY_FACTS } from '../contract/quantity.ts';
import type { Channel } from '../contract/shop.ts';
import { BASE_UNIT, type Quantity } from '../contract/units.ts';
import { type Context, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { NodePart } from './nodes.ts';
import type { ReadingPart } from './readings.ts';
import type { Archive } from './types.ts';

type ChannelRow = Omit<Channel, 'adopted' | 'archived' | 'baseUnit' | 'latest'> & {
  series: number;
  adopted: number;
  archived: number;
};

const SELECT = `
  SELECT series, id, node, name, label, quantity, unit, role, furnace_id AS furnaceId,
    possible_low AS possibleLow, possible_high AS possibleHigh, stale_after_seconds AS staleAfterSeconds,
    adopted, archived, created_at AS createdAt
  FROM channels`;

/** Above every number in use and every number that readings were kept under: none is ever given twice. */
const NEXT_SERIES = `1 + max(coalesce((SELECT max(series) FROM channels), 0),
                             coalesce((SELECT max(series) FROM readings), 0))`;

type NewChannel = Parameters<Archive['createChannel']>[0];

export interface LocatedChannel {
  readonly series: number;
  readonly id: string;
  readonly quantity: Quantity;
  readonly adopted: boolean;
}

/** A channel with the number that its readings are kept under. */
export interface KeptChannel {
  readonly series: number;
  readonly channel: Channel;
}

export interface ChannelPart extends Pick<Archive, 'channels' | 'channel' | 'createChannel' | 'saveChannel'> {
  /** What intake has to know of a channel, and no more: this runs for every payload. */
  readonly locate: (node: string, name: string) => LocatedChannel | null;
  /** Makes a channel that nobody has accepted yet, with the usual facts of its quantity. */
  readonly offer: (node: string, name: string, quantity: Quantity, at: number) => KeptChannel;
  readonly countOffered: (node: string) => number;
}

export function channelPart(
  { db, ids, write }: Context,
  nodes: NodePart,
  readings: ReadingPart,
): ChannelPart {
  const all = db.prepare<[], ChannelRow>(`${SELECT} ORDER BY node, name`);
  const byId = db.prepare<[string], ChannelRow>(`${SELECT} WHERE id = ?`);
  const named = db.prepare<[string, string], ChannelRow>(`${SELECT} WHERE node = ? AND name = ?`);
  const located = db.prepare<[string, string], Omit<LocatedChannel, 'adopted'> & { adopted: number }>(
    'SELECT series, id, quantity, adopted FROM channels WHERE node = ? AND name = ?',
  );
  const offered = db
    .prepare<[string], number>('SELECT count(*) FROM channels WHERE node = ? AND adopted = 0')
    .pluck();
  const insert = db
    .prepare<[object], number>(
      `INSERT INTO channels (series, id, node, name, label, quantity, unit, role, furnace_id, possible_low,
         possible_high, stale_after_seconds, adopted, archived, created_at)
       VALUES (${NEXT_SERIES}, @id, @node, @name, @label, @quantity, @unit, @role, @furnaceId, @possibleLow,
         @possibleHigh, @staleAfterSeconds, @adopted, @archived, @createdAt)
       RETURNING series`,
    )
    .pluck();
  const update = db.prepare(
    `UPDATE channels SET node = @node, name = @name, label = @label, quantity = @quantity, unit = @unit,
       role = @role, furnace_id = @furnaceId, possible_low = @possibleLow, possible_high = @possibleHigh,
       stale_after_seconds = @staleAfterSeconds, adopted = @adopted, archived = @archived WHERE id = @id`,
  );
  const renumber = db.prepare(`UPDATE channels SET series = ${NEXT_SERIES} WHERE id = ?`);

  function toKept(row: ChannelRow): KeptChannel {
    const { series, ...rest } = row;
    const channel = {
      ...rest,
      adopted: row.adopted === 1,
      archived: row.archived === 1,
      baseUnit: BASE_UNIT[row.quantity],
      latest: readings.latestOf(series),
    };
    return { series, channel };
  }
  const find = (row: ChannelRow | undefined): KeptChannel | null => (row ? toKept(row) : null);
  const channel = (id: string): Channel | null => find(byId.get(id))?.channel ?? null;

  function add(draft: NewChannel, adopted: boolean, at: number): KeptChannel {
    const made: Channel = {
      ...draft,
      id: ids(),
      baseUnit: BASE_UNIT[draft.quantity],
      adopted,
      archived: false,
      createdAt: at,
      latest: null,
    };
    const series = insert.get({ ...made, adopted: Number(adopted), archived: 0 });
    if (series === undefined) throw new ArchiveError('fault', 'a channel was inserted without a number');
    return { series, channel: made };
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
    renumber.run(kept.id);
  }

  function saveChannel(changed: Channel): Channel {
    const kept = channel(changed.id);
    if (kept && kept.quantity !== changed.quantity) changeQuantity(kept);
    const { changes } = update.run({
      ...changed,
      adopted: Number(changed.adopted),
      archived: Number(changed.archived),
    });
    mustChange(changes, 'channel', changed.id);
    return channel(changed.id) ?? changed;
  }

  /** A channel may have spoken before a person names it: then it is accepted, with all it has said. */
  function createChannel(draft: NewChannel, at: number): Channel {
    const node = nodes.byName(draft.node);
    if (!node?.adopted) nodes.createNode({ label: '', note: '', ...node, name: draft.node }, at);
    const kept = find(named.get(draft.node, draft.name))?.channel;
    if (!kept) return add(draft, true, at).channel;
    if (kept.adopted) {
      throw new ArchiveError('conflict', `there is already a channel ${draft.node}/${draft.name}`);
    }
    return saveChannel({ ...kept, ...draft, adopted: true });
  }

  return {
    channels: () => all.all().map((row) => toKept(row).channel),
    channel,
    createChannel: (draft, at) => write(() => createChannel(draft, at)),
    saveChannel: (changed) => write(() => saveChannel(changed)),
    locate(node, name) {
      const row = located.get(node, name);
      return row ? { ...row, adopted: row.adopted === 1 } : null;
    },
    offer: (node, name, quantity, at) =>
      add(
        {
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
        },
        false,
        at,
      ),
    countOffered: (node) => offered.get(node) ?? 0,
  };
}
