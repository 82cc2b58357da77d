import type { IncomingReading } from '../archive/types.ts';
import type { InboundMessage } from '../broker/types.ts';
import { type KnownChannel, toReading } from './convert.ts';
import { type Draft, refusedDraft } from './draft.ts';
import { type Fault, type Outcome, quoted, refused } from './outcome.ts';
import { payloadJson, payloadText } from './payload-json.ts';
import { chronological, resolveSenml } from './senml.ts';
import type { SenmlEntry } from './senml-record.ts';
import { fromUnixSeconds } from './time-format.ts';

/** More than this in one pack would hold the hub's one thread for too long. */
export const MOST_ENTRIES = 5000;

/** Looks up a channel of the node whose payload is being read. */
export type ChannelOf = (name: string) => KnownChannel | undefined;

/** `soakwatch/<node>/readings`: a SenML pack in JSON (RFC 8428). */
export function readReadings(node: string, message: InboundMessage, channelOf: ChannelOf): Draft {
  const document = payloadJson(message.payload);
  if (!document.ok) return refusedDraft(node, document);
  if (Array.isArray(document.value) && document.value.length > MOST_ENTRIES) {
    const detail = `${document.value.length} entries, at most ${MOST_ENTRIES} are taken: send several packs`;
    return refusedDraft(node, { reason: 'too-many-entries', detail });
  }
  const pack = resolveSenml(document.value, message.receivedAt / 1000);
  if (!pack.ok) return refusedDraft(node, pack);
  const readings: IncomingReading[] = [];
  const faults: Fault[] = pack.value.faults.map(({ index, reason, detail }) => ({
    reason,
    detail: `entry ${index + 1}: ${detail}`,
  }));
  for (const entry of chronological(pack.value.entries)) {
    const reading = readEntry(entry, message, channelOf);
    if (reading.ok) readings.push(reading.value);
    else faults.push({ reason: reading.reason, detail: `${entry.name.slice(0, 128)}: ${reading.detail}` });
  }
  return { node, readings, faults };
}

function readEntry(
  { name, time, timeIsAbsolute, unit, value }: SenmlEntry,
  { fromRetained, receivedAt }: InboundMessage,
  channelOf: ChannelOf,
): Outcome<IncomingReading> {
  if (value.kind !== 'number') return refused('not-numeric', `a ${value.kind} value cannot be measured`);
  if (fromRetained && !timeIsAbsolute) return retainedWithoutTime();
  const at = fromUnixSeconds(time);
  if (!at.ok) return at;
  const measurement = { name, at: at.value, value: value.value, unit, quantity: null };
  return toReading(measurement, channelOf(name), receivedAt);
}

/** A broker's stored copy is the last known value, not the current one: without a time of its own it says nothing. */
export function retainedWithoutTime(): ReturnType<typeof refused> {
  return refused(
    'retained-without-time',
    'a stored (retained) copy without its own time cannot be placed: send "t", or do not retain readings',
  );
}

/** `soakwatch/<node>/status`: the word `online` or `offline`, retained, the latter as last will. */
export function readStatus(node: string, { payload }: InboundMessage): Draft | null {
  // An empty retained message is how MQTT clears a retained one: it says nothing about the node.
  if (payload.length === 0) return null;
  const text = payloadText(payload);
  if (!text.ok) return refusedDraft(node, text);
  const status = text.value.trim();
  if (status === 'online' || status === 'offline') return { node, status, readings: [], faults: [] };
  return refusedDraft(node, refused('bad-status', `${quoted(status)} is neither online nor offline`));
}
