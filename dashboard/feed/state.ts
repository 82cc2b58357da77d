import type { Alarm } from '../../hub/contract/alarm.ts';
import type { LiveChange, LiveFiring, LiveMessage, LiveSnapshot } from '../../hub/contract/live.ts';
import type { Channel, Furnace, Shop, ShopNode } from '../../hub/contract/shop.ts';

/** What the hub has told, as the screen holds it. Immutable: a change makes a new state. */
export interface FeedState {
  readonly seq: number;
  readonly epoch: string;
  readonly shop: Shop;
  readonly furnaces: ReadonlyMap<string, Furnace>;
  readonly nodes: ReadonlyMap<string, ShopNode>;
  readonly channels: ReadonlyMap<string, Channel>;
  readonly firings: ReadonlyMap<string, LiveFiring>;
  /** Every alarm that is not back to normal. */
  readonly alarms: ReadonlyMap<string, Alarm>;
}

/**
 * What a message did.
 * - `applied`: the state carries it
 * - `old`: it was known already (a resumed stream may repeat), nothing changed
 * - `gap`: the hub is at a sequence number that this screen never got: ask for a snapshot
 */
export type Verdict = 'applied' | 'old' | 'gap';

export interface Applied {
  readonly state: FeedState | null;
  readonly verdict: Verdict;
}

/**
 * Carries one message into the state. `state` is null before the first snapshot.
 *
 * A jump in the numbers of changes alone is no gap: the hub drops what a newer value of the same channel
 * superseded. The heartbeat settles it: it carries the newest number, and everything before it has been sent.
 */
export function applyMessage(state: FeedState | null, message: LiveMessage): Applied {
  if (message.type === 'snapshot') return { state: fromSnapshot(message), verdict: 'applied' };
  if (state === null) return { state, verdict: 'gap' };
  if (message.type === 'heartbeat') {
    return { state, verdict: message.seq === state.seq ? 'applied' : 'gap' };
  }
  if (message.seq <= state.seq) return { state, verdict: 'old' };
  return { state: { ...applyChange(state, message), seq: message.seq }, verdict: 'applied' };
}

function fromSnapshot(snapshot: LiveSnapshot): FeedState {
  return {
    seq: snapshot.seq,
    epoch: snapshot.epoch,
    shop: snapshot.shop,
    furnaces: byId(snapshot.furnaces),
    nodes: byId(snapshot.nodes),
    channels: byId(snapshot.channels),
    firings: new Map(snapshot.firings.map((live) => [live.firing.id, live])),
    alarms: byId(snapshot.alarms),
  };
}

function applyChange(state: FeedState, change: LiveChange): FeedState {
  switch (change.type) {
    case 'reading': {
      const channel = state.channels.get(change.channel);
      if (channel === undefined || (channel.latest?.at ?? -1) > change.reading.at) return state;
      return { ...state, channels: put(state.channels, channel.id, { ...channel, latest: change.reading }) };
    }
    case 'firing':
      return { ...state, firings: putOrDrop(state.firings, change.id, change.live) };
    case 'alarm': {
      const open = change.alarm.state === 'normal' ? null : change.alarm;
      return { ...state, alarms: putOrDrop(state.alarms, change.alarm.id, open) };
    }
    case 'node':
      return { ...state, nodes: put(state.nodes, change.node.id, change.node) };
    case 'channel': {
      const channel = change.channel.archived ? null : change.channel;
      return { ...state, channels: putOrDrop(state.channels, change.channel.id, channel) };
    }
    case 'furnace': {
      const furnace = change.furnace.archived ? null : change.furnace;
      return { ...state, furnaces: putOrDrop(state.furnaces, change.furnace.id, furnace) };
    }
    case 'shop':
      return { ...state, shop: change.shop };
    default:
      return change satisfies never;
  }
}

function byId<T extends { readonly id: string }>(things: readonly T[]): ReadonlyMap<string, T> {
  return new Map(things.map((thing) => [thing.id, thing]));
}

function put<T>(map: ReadonlyMap<string, T>, id: string, thing: T): ReadonlyMap<string, T> {
  return new Map(map).set(id, thing);
}

function putOrDrop<T>(map: ReadonlyMap<string, T>, id: string, thing: T | null): ReadonlyMap<string, T> {
  if (thing !== null) return put(map, id, thing);
  const without = new Map(map);
  without.delete(id);
  return without;
}
