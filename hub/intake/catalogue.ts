import type { Archive } from '../archive/types.ts';
import type { Channel } from '../contract/shop.ts';
import { type ReadyBinding, readyBinding } from './bindings.ts';
import type { KnownChannel } from './convert.ts';

/** The channels and bindings as intake last saw them, so that no message costs a query. */
export interface Catalogue {
  channel(node: string, name: string): KnownChannel | undefined;
  /** True when a channel of the node has a probe: other nodes cost no second look. */
  hasProbes(node: string): boolean;
  /** The channels that are computed from this emf channel of the same node. */
  computedFrom(node: string, emfName: string): readonly KnownChannel[];
  /** True when a probe of the node takes this channel for the temperature of its terminals. */
  isJunction(node: string, name: string): boolean;
  /** Id of a channel that measures a temperature. */
  temperatureId(node: string, name: string): string | undefined;
  bindings(): readonly ReadyBinding[];
  /** Takes in channels that a commit has just made. */
  learn(channels: readonly Channel[]): void;
  /** Reads everything again: said whenever channels or bindings were changed by a person. */
  refresh(): void;
}

export function createCatalogue(archive: Pick<Archive, 'channels' | 'bindings'>): Catalogue {
  let channels = new Map<string, Channel>();
  let probes = probeIndex([]);
  let bindings: readonly ReadyBinding[] = [];

  function refresh(): void {
    const all = archive.channels();
    channels = new Map(all.map((channel) => [keyOf(channel.node, channel.name), channel]));
    probes = probeIndex(all.filter(({ archived }) => !archived));
    bindings = archive.bindings().map(readyBinding);
  }

  refresh();
  return {
    channel: (node, name) => channels.get(keyOf(node, name)),
    hasProbes: (node) => probes.nodes.has(node),
    computedFrom: (node, emfName) => probes.computed.get(keyOf(node, emfName)) ?? [],
    isJunction: (node, name) => probes.junctions.has(keyOf(node, name)),
    temperatureId(node, name) {
      const channel = channels.get(keyOf(node, name));
      return channel?.quantity === 'temperature' ? channel.id : undefined;
    },
    bindings: () => bindings,
    learn(made) {
      for (const channel of made) channels.set(keyOf(channel.node, channel.name), channel);
    },
    refresh,
  };
}

interface ProbeIndex {
  readonly nodes: ReadonlySet<string>;
  /** By the key of the emf channel. */
  readonly computed: ReadonlyMap<string, readonly Channel[]>;
  readonly junctions: ReadonlySet<string>;
}

function probeIndex(channels: readonly Channel[]): ProbeIndex {
  const nodes = new Set<string>();
  const computed = new Map<string, Channel[]>();
  const junctions = new Set<string>();
  for (const channel of channels) {
    const source = channel.probe?.source;
    if (source === undefined) continue;
    nodes.add(channel.node);
    if (source.kind !== 'celsius') junctions.add(keyOf(channel.node, source.coldJunctionChannel));
    if (source.kind !== 'emf') continue;
    const key = keyOf(channel.node, source.emfChannel);
    computed.set(key, [...(computed.get(key) ?? []), channel]);
  }
  return { nodes, computed, junctions };
}

/** A node's name holds no slash, so the first one parts it from the channel's name. */
function keyOf(node: string, name: string): string {
  return `${node}/${name}`;
}
