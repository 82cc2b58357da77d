import type { Finding, Params } from '../contract/alarm.ts';
import { freshness, NEVER_SEEN, staleAt } from '../judging/held.ts';
import type { BlindnessChannel, BlindnessConfig, BlindnessState, RunningFiring } from './types.ts';

/** What is not watched at the instant a state stands at. */

/** A furnace that went silent while hot is taken as hot for this long. Common practice, no source. */
const HOT_MEMORY_MS = 4 * 3_600_000;

type Furnace = BlindnessConfig['furnaces'][number];

/** A channel that has to be watched now, and on whose behalf. */
interface Need {
  readonly channel: BlindnessChannel;
  readonly firing: RunningFiring | null;
  readonly since: number;
}

function heardHot(state: BlindnessState, channel: BlindnessChannel): number | null {
  const since = state.hot[channel.id];
  const held = state.channels[channel.id];
  if (since === undefined || held === undefined || !held.seen) return null;
  return state.at - held.goodAt <= HOT_MEMORY_MS ? since : null;
}

/** Every channel that has to be watched: of a running firing, or of the chamber of a hot furnace. */
function needs(config: BlindnessConfig, state: BlindnessState): Need[] {
  const found: Need[] = [];
  for (const channel of config.channels) {
    const firing = state.firings.find((running) => running.watched.includes(channel.id)) ?? null;
    const hotSince = channel.role === 'chamber' ? heardHot(state, channel) : null;
    if (firing !== null) found.push({ channel, firing, since: firing.since });
    else if (hotSince !== null) found.push({ channel, firing, since: hotSince });
  }
  return found;
}

/** Since when a channel is not fresh, epoch ms; null while it is. `neededSince`: a silent one gets its time. */
function blindSince(state: BlindnessState, channel: BlindnessChannel, neededSince: number): number | null {
  const held = state.channels[channel.id] ?? NEVER_SEEN;
  const age = freshness(held, channel.staleAfterSeconds, state.at);
  if (age === 'fresh') return null;
  if (age === 'stale') return staleAt(held, channel.staleAfterSeconds);
  const dueAt = Math.max(neededSince, state.startedAt) + channel.staleAfterSeconds * 1000;
  return state.at >= dueAt ? dueAt : null;
}

function lastWord(state: BlindnessState, channel: BlindnessChannel): Params {
  const held = state.channels[channel.id] ?? NEVER_SEEN;
  const celsius = channel.role === 'chamber' || channel.role === 'load';
  return {
    ageSeconds: held.seen ? (state.at - held.goodAt) / 1000 : null,
    lastCelsius: held.seen && celsius ? held.value : null,
  };
}

function furnaceParams(config: BlindnessConfig, furnaceId: string | null): Params {
  const furnace = config.furnaces.find((candidate) => candidate.id === furnaceId);
  if (furnace === undefined) return { furnaceId: null };
  return { furnaceId: furnace.id, furnaceName: furnace.name, furnaceKind: furnace.kind };
}

function channelFinding(config: BlindnessConfig, state: BlindnessState, need: Need): Finding | null {
  const { channel, firing } = need;
  const since = blindSince(state, channel, need.since);
  if (since === null) return null;
  const params: Params = {
    ...furnaceParams(config, firing?.furnaceId ?? channel.furnaceId),
    ...lastWord(state, channel),
    firingId: firing?.firingId ?? null,
    channel: channel.id,
    label: channel.label,
    node: channel.node,
  };
  return { kind: 'not-watching-channel', subject: channel.id, since, params };
}

function nodeFinding(
  config: BlindnessConfig,
  state: BlindnessState,
  node: string,
  carried: readonly Need[],
): Finding | null {
  const since = state.offline[node];
  const [first] = carried;
  if (since === undefined || first === undefined) return null;
  const firing = carried.find((need) => need.firing !== null)?.firing ?? null;
  const params: Params = {
    ...furnaceParams(config, firing?.furnaceId ?? first.channel.furnaceId),
    ...lastWord(state, first.channel),
    firingId: firing?.firingId ?? null,
    node,
    channels: carried.length,
  };
  return { kind: 'not-watching-node', subject: node, since, params };
}

/** The furnaces that are at work now: a firing runs or the chamber was hot at its last word. */
function working(config: BlindnessConfig, state: BlindnessState): { furnace: Furnace; since: number }[] {
  const found: { furnace: Furnace; since: number }[] = [];
  for (const furnace of config.furnaces) {
    // Only an electric oven surely burns nothing.
    if (config.watchCarbonMonoxideFor === 'fuel-burning' && furnace.kind === 'electric-oven') continue;
    const firings = state.firings.filter((firing) => firing.furnaceId === furnace.id);
    const hot = config.channels
      .filter((channel) => channel.role === 'chamber' && channel.furnaceId === furnace.id)
      .map((channel) => heardHot(state, channel))
      .filter((since) => since !== null);
    const starts = [...firings.map((firing) => firing.since), ...hot];
    if (starts.length > 0) found.push({ furnace, since: Math.min(...starts) });
  }
  return found;
}

/** Only a CO sensor in the room watches the air; a room thermometer does not. */
function isAirChannel(channel: BlindnessChannel): boolean {
  return channel.role === 'room-air' && channel.quantity === 'carbon-monoxide';
}

function airFinding(config: BlindnessConfig, state: BlindnessState): Finding | null {
  const [first, ...others] = working(config, state);
  if (first === undefined) return null;
  const since = Math.min(first.since, ...others.map((other) => other.since));
  const air = config.channels.filter(isAirChannel);
  const blind: number[] = [];
  for (const channel of air) {
    const from = blindSince(state, channel, since);
    if (from === null) return null;
    blind.push(from);
  }
  const ages = air
    .map((channel) => lastWord(state, channel).ageSeconds)
    .filter((age) => typeof age === 'number');
  const params: Params = {
    ...furnaceParams(config, first.furnace.id),
    channels: air.length,
    ageSeconds: ages.length === 0 ? null : Math.min(...ages),
  };
  return { kind: 'not-watching-air', subject: 'shop', since: Math.max(since, ...blind), params };
}

/** Channels without which the air is not watched; none while nothing is at work. */
function airNeeds(config: BlindnessConfig, state: BlindnessState): Need[] {
  const [first] = working(config, state);
  if (first === undefined) return [];
  return config.channels
    .filter(isAirChannel)
    .map((channel) => ({ channel, firing: null, since: first.since }));
}

/** What is not watched now. A node that is offline speaks for its channels. */
export function blindnessFindings(config: BlindnessConfig, state: BlindnessState): Finding[] {
  const wanted = needs(config, state);
  const carried = [...wanted, ...airNeeds(config, state)];
  const found: (Finding | null)[] = [];
  for (const need of wanted) {
    if (state.offline[need.channel.node] === undefined) found.push(channelFinding(config, state, need));
  }
  for (const node of new Set(carried.map((need) => need.channel.node))) {
    const own = carried.filter((need) => need.channel.node === node);
    found.push(nodeFinding(config, state, node, own));
  }
  found.push(airFinding(config, state));
  return found.filter((finding) => finding !== null);
}
