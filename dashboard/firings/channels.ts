import type { Firing } from '../../hub/contract/firing.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { firingWords } from '../words/firings.ts';

/** A channel whose readings a firing's page can draw. */
export interface CurveChannel {
  readonly id: string;
  readonly label: string;
  readonly watched: boolean;
  readonly quantity: Channel['quantity'];
  readonly staleAfterSeconds: number;
}

/** Assumed for a watched channel that has been put away since; only a running firing uses it. */
const STALE_AFTER_SECONDS = 20;

/** The watched channels first, as they were frozen, then the others of the same furnace by label. */
export function curveChannels(
  firing: Pick<Firing, 'watchedChannels' | 'furnaceId'>,
  known: ReadonlyMap<string, Channel>,
): CurveChannel[] {
  const watched = firing.watchedChannels.map((id) => {
    const channel = known.get(id);
    return channel ? drawn(channel, true) : putAway(id);
  });
  const others = [...known.values()]
    .filter((channel) => channel.adopted && channel.furnaceId === firing.furnaceId)
    .filter((channel) => !firing.watchedChannels.includes(channel.id))
    .map((channel) => drawn(channel, false))
    .sort((a, b) => a.label.localeCompare(b.label));
  return [...watched, ...others];
}

/** What people call a channel. */
export function channelLabel(channel: Pick<Channel, 'label' | 'node' | 'name'>): string {
  return channel.label || `${channel.node}/${channel.name}`;
}

function drawn(channel: Channel, watched: boolean): CurveChannel {
  const { id, quantity, staleAfterSeconds } = channel;
  return { id, label: channelLabel(channel), watched, quantity, staleAfterSeconds };
}

function putAway(id: string): CurveChannel {
  return {
    id,
    label: firingWords.channelAway,
    watched: true,
    quantity: 'temperature',
    staleAfterSeconds: STALE_AFTER_SECONDS,
  };
}
