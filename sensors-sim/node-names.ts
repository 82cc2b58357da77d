/** The nodes of the simulated shop, their channels, and the unit each is published in (SenML names). */

/** What a shop may have beyond the usual channels. */
export const FITTINGS = ['oven-zones', 'second-co', 'air-climate', 'cylinder-gauges'] as const;
export type Fitting = (typeof FITTINGS)[number];

interface ChannelFacts {
  readonly unit: string;
  /** Only there when the shop is fitted with it. */
  readonly fitting?: Fitting;
}

/** Every channel there can be, in the order in which they are published. */
export const NODE_CHANNELS = {
  'forge-node': {
    chamber: { unit: 'Cel' },
    load: { unit: 'Cel' },
    'supply-pressure': { unit: 'Pa' },
    'cylinder-mass': { unit: 'kg' },
    'cylinder-pressure': { unit: 'Pa', fitting: 'cylinder-gauges' },
    'cylinder-wall': { unit: 'Cel', fitting: 'cylinder-gauges' },
  },
  'oven-node': {
    chamber: { unit: 'Cel' },
    load: { unit: 'Cel' },
    'chamber-front': { unit: 'Cel', fitting: 'oven-zones' },
    'chamber-back': { unit: 'Cel', fitting: 'oven-zones' },
  },
  'air-node': {
    co: { unit: 'ppm' },
    'co-corner': { unit: 'ppm', fitting: 'second-co' },
    co2: { unit: 'ppm', fitting: 'air-climate' },
    o2: { unit: '/', fitting: 'air-climate' },
    humidity: { unit: '%RH', fitting: 'air-climate' },
    room: { unit: 'Cel', fitting: 'air-climate' },
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, ChannelFacts>>>>;

export type NodeName = keyof typeof NODE_CHANNELS;

export const NODE_NAMES = ['forge-node', 'oven-node', 'air-node'] as const satisfies readonly NodeName[];

/** Unit of a node's channel, or null when no shop's node has such a channel. */
export function unitOf(node: NodeName, channel: string): string | null {
  return factsOf(node).find(([name]) => name === channel)?.[1].unit ?? null;
}

/** What a shop must be fitted with to have this channel; null: every shop has it. */
export function fittingOf(node: NodeName, channel: string): Fitting | null {
  return factsOf(node).find(([name]) => name === channel)?.[1].fitting ?? null;
}

/** Names of a node's channels in a shop with these fittings, in the order in which they are published. */
export function channelsOf(node: NodeName, fittings: readonly Fitting[] = []): readonly string[] {
  return factsOf(node)
    .filter(([, { fitting }]) => fitting === undefined || fittings.includes(fitting))
    .map(([name]) => name);
}

function factsOf(node: NodeName): readonly (readonly [string, ChannelFacts])[] {
  return Object.entries(NODE_CHANNELS[node]);
}
