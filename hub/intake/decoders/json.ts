import type { PayloadDecoder } from '../../contract/shop.ts';
import { followPointer, pointerTokens } from '../json-pointer.ts';
import { type Outcome, quoted, refused, understood } from '../outcome.ts';
import { payloadJson } from '../payload-json.ts';
import { readInstant } from '../time-format.ts';
import type { Decode, Decoded } from './types.ts';

type JsonDecoder = Extract<PayloadDecoder, { kind: 'json' }>;

/**
 * A number, and optionally an instant, picked out of a JSON document by RFC 6901 pointers.
 * Refusals: those of `payloadJson` and `readInstant`, `value-not-found`, `bad-value`, `not-finite`.
 */
export function jsonDecoder({ valuePointer, timePointer, timeFormat }: JsonDecoder): Decode {
  const valueTokens = pointerTokens(valuePointer);
  const timeTokens = timePointer === null ? null : pointerTokens(timePointer);
  if (valueTokens === undefined || timeTokens === undefined) {
    const pointer = valueTokens === undefined ? valuePointer : timePointer;
    return () =>
      refused('value-not-found', `the binding's ${quoted(pointer)} is not a JSON pointer (RFC 6901)`);
  }
  return (payload) => {
    const document = payloadJson(payload);
    if (!document.ok) return document;
    const value = readValue(document.value, valueTokens);
    if (!value.ok) return value;
    const at = timeTokens === null ? understood(null) : readTime(document.value, timeTokens, timeFormat);
    if (!at.ok) return at;
    return understood<Decoded>({ value: value.value, at: at.value });
  };
}

function readValue(document: unknown, tokens: readonly string[]): Outcome<number> {
  const found = followPointer(document, tokens);
  if (!found.ok) return found;
  const { value } = found;
  if (typeof value !== 'number') return refused('bad-value', `the value is ${quoted(value)}, not a number`);
  if (!Number.isFinite(value)) return refused('not-finite', 'the value is beyond what a number can hold');
  return understood(value);
}

function readTime(
  document: unknown,
  tokens: readonly string[],
  format: JsonDecoder['timeFormat'],
): Outcome<number> {
  const found = followPointer(document, tokens);
  return found.ok ? readInstant(found.value, format) : found;
}
