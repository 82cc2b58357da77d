import type { RefusalReason } from './refusal-reasons.ts';

/** Why something could not be used: a stable code for counting, and words for a person. */
export interface Fault {
  readonly reason: RefusalReason;
  readonly detail: string;
}

/** What understanding a piece of a payload comes to. Refusals are values here, never exceptions. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | ({ readonly ok: false } & Fault);

export function understood<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

export function refused(reason: RefusalReason, detail: string): { readonly ok: false } & Fault {
  return { ok: false, reason, detail };
}

const LONGEST_QUOTE = 60;

/** A piece of a payload, fit to stand in a sentence: short, and never walked into. */
export function quoted(value: unknown): string {
  if (typeof value === 'string') {
    const text = value.length > LONGEST_QUOTE ? `${value.slice(0, LONGEST_QUOTE)}…` : value;
    return `"${text}"`;
  }
  if (Array.isArray(value)) return 'an array';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}
