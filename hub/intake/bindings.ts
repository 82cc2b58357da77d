import type { IncomingReading } from '../archive/types.ts';
import type { InboundMessage } from '../broker/types.ts';
import type { Binding } from '../contract/shop.ts';
import { type KnownChannel, toReading } from './convert.ts';
import { decoderFor } from './decoders/decoder.ts';
import type { Decode } from './decoders/types.ts';
import { type Draft, refusedDraft } from './draft.ts';
import { retainedWithoutTime } from './native.ts';
import type { Outcome } from './outcome.ts';
import { firstWildcard, type TopicFilter, topicFilter } from './topics.ts';

/** A binding made ready to match and to read. */
export interface ReadyBinding {
  readonly binding: Binding;
  readonly filter: TopicFilter;
  readonly decode: Decode;
}

export function readyBinding(binding: Binding): ReadyBinding {
  return { binding, filter: topicFilter(binding.topic), decode: decoderFor(binding.decoder) };
}

/** The node that a topic speaks for: the binding's own, or the text at its first `+`. */
export function boundNode({ binding, filter }: ReadyBinding, topic: string): string {
  return binding.node ?? firstWildcard(filter, topic) ?? '';
}

/** What a foreign payload says through a binding whose filter matches its topic. */
export function readThrough(
  ready: ReadyBinding,
  message: InboundMessage,
  channelOf: (node: string, name: string) => KnownChannel | undefined,
): Draft {
  const { binding, decode } = ready;
  const node = boundNode(ready, message.topic);
  const reading = readBound(binding, decode, message, channelOf(node, binding.channel));
  if (reading.ok) return { node, readings: [reading.value], faults: [] };
  const { reason, detail } = reading;
  return refusedDraft(node, { reason, detail: `${binding.channel}: ${detail}` });
}

function readBound(
  binding: Binding,
  decode: Decode,
  { payload, fromRetained, receivedAt }: InboundMessage,
  channel: KnownChannel | undefined,
): Outcome<IncomingReading> {
  const decoded = decode(payload);
  if (!decoded.ok) return decoded;
  const { at } = decoded.value;
  if (at === null && fromRetained) return retainedWithoutTime();
  const measurement = {
    name: binding.channel,
    at: at ?? receivedAt,
    value: decoded.value.value * binding.scale + binding.offset,
    unit: binding.unit,
    quantity: binding.quantity,
  };
  return toReading(measurement, channel, receivedAt);
}
