/** The nodes of the simulated shop, their channels, and the unit each is published in (SenML names). */

export const NODE_CHANNELS = {
  'forge-node': { chamber: 'Cel', load: 'Cel', 'supply-pressure': 'Pa', 'cylinder-mass': 'kg' },
  'oven-node': { chamber: 'Cel', load: 'Cel' },
  'air-node': { co: 'ppm' },
} as const;

export type NodeName = keyof typeof NODE_CHANNELS;

export const NODE_NAMES = ['forge-node', 'oven-node', 'air-node'] as const satisfies readonly NodeName[];

/** Unit of a node's channel, or null when the node has no such channel. */
export function unitOf(node: NodeName, channel: string): string | null {
  const channels: Readonly<Record<string, string>> = NODE_CHANNELS[node];
  return Object.hasOwn(channels, channel) ? (channels[channel] ?? null) : null;
}

/** Names of a node's channels, in the order in which they are published. */
export function channelsOf(node: NodeName): readonly string[] {
  return Object.keys(NODE_CHANNELS[node]);
}
