import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { Finding, Params } from '../contract/alarm.ts';
import type { ProbeFaultCode } from '../contract/probe.ts';
import { freshness, type HeldChannel, NEVER_SEEN } from '../judging/held.ts';
import type { ProbeChannel, ProbesConfig, ProbesFiring, ProbesState, ToldFault } from './types.ts';

/** Which probes are at fault at the instant a state stands at, where it matters. */

/** Watched by a running firing, or in the chamber of a furnace that is hot: the same that blindness looks after. */
function matters(
  config: ProbesConfig,
  state: ProbesState,
  channel: ProbeChannel,
  firing: ProbesFiring | null,
) {
  if (firing !== null) return true;
  if (channel.role !== 'chamber') return false;
  // Any chamber probe of the furnace: the one at fault may be the one that reads cold.
  return config.channels.some(
    ({ id, role, furnaceId }) =>
      role === 'chamber' && furnaceId === channel.furnaceId && state.hot[id] !== undefined,
  );
}

/** A probe that gives no fresh reading is blindness, which is louder: it is not told here as well. */
function isFresh(state: ProbesState, { id, staleAfterSeconds }: ProbeChannel): boolean {
  return freshness(heldOf(state, id), staleAfterSeconds, state.at) === 'fresh';
}

function heldOf(state: ProbesState, id: string): HeldChannel {
  return state.values[id] ?? NEVER_SEEN;
}

function furnaceParams(config: ProbesConfig, furnaceId: string): Params {
  const furnace = config.furnaces.find(({ id }) => id === furnaceId);
  if (furnace === undefined) return { furnaceId: null };
  return { furnaceId: furnace.id, furnaceName: furnace.name, furnaceKind: furnace.kind };
}

function evidenceParams({ evidence }: ToldFault): Params {
  const moved = evidence.othersMovedCelsius ?? evidence.othersRoseCelsius;
  return {
    ...(moved === undefined ? {} : { othersMovedCelsius: moved }),
    ...(evidence.fromCelsius === undefined ? {} : { fromCelsius: evidence.fromCelsius }),
    ...(evidence.toCelsius === undefined ? {} : { toCelsius: evidence.toCelsius }),
  };
}

function findingOf(
  config: ProbesConfig,
  state: ProbesState,
  channel: ProbeChannel,
  told: ToldFault,
  firing: ProbesFiring | null,
): Finding {
  const held = heldOf(state, channel.id);
  const params: Params = {
    ...furnaceParams(config, channel.furnaceId),
    firingId: firing?.firingId ?? null,
    channel: channel.id,
    label: channel.label,
    node: channel.node,
    fault: told.fault,
    measuredCelsius: held.seen ? held.value : null,
    faultSeconds: (state.at - told.since) / 1000,
    ...evidenceParams(told),
  };
  return { kind: 'probe-fault', subject: channel.id, since: told.since, params };
}

/** Probes at fault now, of running firings and of hot furnaces. */
export function probeFindings(
  config: ProbesConfig,
  state: ProbesState,
  running: readonly ProbesFiring[],
): Finding[] {
  const { offDelayMs } = ALARM_DEFINITIONS['probe-fault'];
  const found: Finding[] = [];
  for (const channel of config.channels) {
    const told = state.probes[channel.id]?.told ?? null;
    if (told === null || state.at - told.lastAt > offDelayMs || !isFresh(state, channel)) continue;
    const firing = running.find(({ watched }) => watched.includes(channel.id)) ?? null;
    if (matters(config, state, channel, firing)) found.push(findingOf(config, state, channel, told, firing));
  }
  return found;
}

/** The faults that leave a channel without usable readings. */
const BLINDING: readonly ProbeFaultCode[] = ['open', 'reversed'];

/**
 * Why channels that do speak give no usable reading: by channel id, what their last words looked like. For the
 * blindness that they are told as.
 */
export function blindCauses(config: ProbesConfig, state: ProbesState): ReadonlyMap<string, ProbeFaultCode> {
  const causes = new Map<string, ProbeFaultCode>();
  for (const { id, staleAfterSeconds } of config.channels) {
    const probe = state.probes[id];
    if (probe === undefined || probe.usable) continue;
    const { atMs, finding } = probe.faults;
    const speaks = atMs !== undefined && state.at - atMs < staleAfterSeconds * 1000;
    if (speaks && finding !== null && BLINDING.includes(finding.fault)) causes.set(id, finding.fault);
  }
  return causes;
}
