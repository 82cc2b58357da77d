import { type Outcome, quoted, refused, understood } from '../outcome.ts';
import { payloadText } from '../payload-json.ts';
import type { Decoded } from './types.ts';

/** A decimal number and nothing else: no hexadecimal, no decimal comma, no unit behind it, no "nan". */
const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/** A payload that is one number as text. Refusals: those of `payloadText`, `bad-value`, `not-finite`. */
export function numberDecoder(payload: Uint8Array): Outcome<Decoded> {
  const text = payloadText(payload);
  if (!text.ok) return text;
  const trimmed = text.value.trim();
  if (!DECIMAL.test(trimmed)) return refused('bad-value', `${quoted(trimmed)} is not a decimal number`);
  const value = Number(trimmed);
  if (!Number.isFinite(value)) return refused('not-finite', 'the number is beyond what a number can hold');
  return understood({ value, at: null });
}
