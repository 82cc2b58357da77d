import type { Archive } from '../archive/types.ts';
import type { Channel } from '../contract/shop.ts';
import { type ReadyBinding, readyBinding } from './bindings.ts';
import type { KnownChannel } from './convert.ts';

/** The channels and bindings as intake last saw them, so that no message costs a query. */
export interface Catalogue {
  channel(node: string, name: string): KnownChannel | undefined;
  bindings(): readonly ReadyBinding[];
  /** Takes in channels that a commit has just made. */
  learn(channels: readonly Channel[]): void;
  /** Reads everything again: said whenever channels or bindings were changed by a person. */
  refresh(): void;
}

export function createCatalogue(archive: Pick<Archive, 'channels' | 'bindings'>): Catalogue {
  let channels = new Map<string, KnownChannel>();
  let bindings: readonly ReadyBinding[] = [];

  function refresh(): void {
    channels = new Map(archive.channels().map((channel) => [keyOf(channel.node, channel.name), channel]));
    bindings = archive.bindings().map(readyBinding);
  }

  refresh();
  return {
    channel: (node, name) => channels.get(keyOf(node, name)),
    bindings: () => bindings,
    learn(made) {
      for (const channel of made) channels.set(keyOf(channel.node, channel.name), channel);
    },
    refresh,
  };
}

/** A node's name holds no slash, so the first one parts it from the channel's name. */
function keyOf(node: string, name: string): string {
  return `${node}/${name}`;
}
