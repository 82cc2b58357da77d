import type { Channel, ShopNode } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';

/** What waits to be taken in. */
export interface Offer {
  readonly node: ShopNode;
  readonly channels: readonly Channel[];
}

/** Nodes that nobody has accepted, and accepted ones that offer something new, by name. */
export function offersOf(state: Pick<FeedState, 'nodes' | 'channels'>): Offer[] {
  return [...state.nodes.values()]
    .map((node) => ({ node, channels: offered(state.channels, node.name) }))
    .filter(({ node, channels }) => !node.adopted || channels.length > 0)
    .sort((a, b) => a.node.name.localeCompare(b.node.name));
}

function offered(channels: ReadonlyMap<string, Channel>, node: string): Channel[] {
  return [...channels.values()]
    .filter((channel) => channel.node === node && !channel.adopted && !channel.archived)
    .sort((a, b) => a.name.localeCompare(b.name));
}
