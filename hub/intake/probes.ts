import type { IncomingReading } from '../archive/types.ts';
import type { Catalogue } from './catalogue.ts';
import { type KnownChannel, qualityOf } from './convert.ts';
import type { Draft } from './draft.ts';
import { type Fault, refused } from './outcome.ts';
import { type Junctions, nearestInPack, temperaturesOf } from './probe-junctions.ts';
import { isAtUpperEnd, type JunctionCelsius, probeCelsius } from './probe-value.ts';

export interface ProbeParts {
  readonly catalogue: Pick<Catalogue, 'channel' | 'computedFrom' | 'hasProbes'>;
  readonly junctions: Junctions;
}

/** What one reading comes to: the readings to keep in its place, and what could not be done. */
interface Settled {
  readonly readings: readonly IncomingReading[];
  readonly faults: readonly Fault[];
}

/**
 * A draft with what the probes of its node make of it: temperatures are corrected, straight lines undone, and
 * temperatures computed from emf and the temperature of the terminals. Whatever was sent as emf is kept as emf too.
 *
 * Refusals: `no-cold-junction`, `outside-table`, `computed-here`. A computed temperature that cannot be computed is
 * not kept at all: there is no value that would be less wrong than none. A straight line that cannot be undone is
 * kept as it was sent, but as bad, so that it is never judged.
 */
export function withProbes(draft: Draft, receivedAt: number, { catalogue, junctions }: ProbeParts): Draft {
  const { node } = draft;
  if (!catalogue.hasProbes(node)) return draft;
  const pack = temperaturesOf(draft.readings);
  const junctionOf = (channel: KnownChannel, at: number): JunctionCelsius => {
    const source = channel.probe?.source;
    if (source === undefined || source.kind === 'celsius') return undefined;
    const name = source.coldJunctionChannel;
    return nearestInPack(pack, name, at) ?? junctions.before(node, name, at);
  };
  const readings: IncomingReading[] = [];
  const faults: Fault[] = [...draft.faults];
  const add = (settled: Settled): void => {
    readings.push(...settled.readings);
    faults.push(...settled.faults);
  };
  for (const reading of draft.readings) {
    const channel = catalogue.channel(node, reading.name);
    if (channel === undefined) readings.push(reading);
    else add(settleOwn(channel, reading, junctionOf(channel, reading.at), receivedAt));
    if (reading.quantity !== 'emf' || reading.quality === 'bad') continue;
    for (const computed of catalogue.computedFrom(node, reading.name)) {
      add(computeFrom(computed, reading, junctionOf(computed, reading.at), receivedAt));
    }
  }
  junctions.hear(node, draft.readings);
  return { ...draft, readings, faults };
}

/** A reading that was sent under the channel's own name. */
function settleOwn(
  channel: KnownChannel,
  reading: IncomingReading,
  junction: JunctionCelsius,
  receivedAt: number,
): Settled {
  const { probe } = channel;
  if (!probe || reading.quantity !== 'temperature') return { readings: [reading], faults: [] };
  if (probe.source.kind === 'emf') {
    const detail = `${channel.name} is computed here from ${probe.source.emfChannel}: what is sent under its name is not kept`;
    return { readings: [], faults: [refused('computed-here', detail)] };
  }
  const celsius = probeCelsius(probe, reading.value, junction);
  if (!celsius.ok) {
    const reason = celsius.reason === 'no-cold-junction' ? 'no-cold-junction' : 'out-of-range';
    return { readings: [{ ...reading, quality: 'bad', reason }], faults: [named(channel, celsius)] };
  }
  const settled = requalified(channel, { ...reading, value: celsius.value }, receivedAt);
  const atEnd = probe.source.kind === 'celsius' && isAtUpperEnd(probe, reading.value);
  return { readings: [atEnd ? { ...settled, quality: 'bad', reason: 'out-of-range' } : settled], faults: [] };
}

/** The reading of a computed channel, from a reading of its emf channel. */
function computeFrom(
  channel: KnownChannel,
  emf: IncomingReading,
  junction: JunctionCelsius,
  receivedAt: number,
): Settled {
  if (!channel.probe) return { readings: [], faults: [] };
  const celsius = probeCelsius(channel.probe, emf.value, junction);
  if (!celsius.ok) return { readings: [], faults: [named(channel, celsius)] };
  const { at } = emf;
  const computed: IncomingReading = {
    name: channel.name,
    quantity: 'temperature',
    at,
    value: celsius.value,
    quality: 'good',
  };
  return { readings: [requalified(channel, computed, receivedAt)], faults: [] };
}

/** The same reading judged by its settled value: what was possible before a correction may not be after it. */
function requalified(channel: KnownChannel, reading: IncomingReading, receivedAt: number): IncomingReading {
  const { reason: _before, ...plain } = reading;
  return { ...plain, ...qualityOf(channel, reading, receivedAt) };
}

function named(channel: KnownChannel, { reason, detail }: Fault): Fault {
  return { reason, detail: `${channel.name}: ${detail}` };
}
