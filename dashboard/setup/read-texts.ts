import { type Entry, readDuration, readNumber, writeDuration } from '../parts/number-entry.ts';
import { faultWords } from '../words/faults.ts';

/** Reads the texts of a form one by one and remembers what could not be read. */
export class Reader {
  readonly faults: Record<string, string> = {};

  /** The value of an entry, or undefined with its fault noted under `path`. */
  take<T>(path: string, text: string, entry: Entry<T>): T | undefined {
    if (entry.ok) return entry.value;
    this.faults[path] = text.trim() === '' ? faultWords.missing : entry.message;
    return undefined;
  }

  /** A plain number; empty is undefined, so that the schema can say whether it is needed. */
  number(path: string, text: string): number | undefined {
    return this.take(path, text, readNumber(text)) ?? undefined;
  }
}

/** A duration where a bare number means seconds ("20", "90 s", "1 min 30 s"). Seconds; null for nothing. */
export function readSeconds(text: string): Entry<number | null> {
  const clean = text.trim();
  if (clean === '') return { ok: true, value: null };
  return /^\d+([.,]\d+)?$/.test(clean) ? readNumber(clean) : readDuration(clean);
}

export function writeSeconds(seconds: number): string {
  return writeDuration(seconds);
}
