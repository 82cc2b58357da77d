import type { KeptHead } from '../api/alarm-client.ts';
import type { Faults } from '../parts/faults.ts';
import { journalWords } from '../words/alarm-journal.ts';

export interface HeadTexts {
  readonly seq: string;
  readonly hash: string;
}

/** The last entry that somebody kept, as typed: to check against, or what is wrong with it. */
export function checkHead({ seq, hash }: HeadTexts): {
  readonly value: KeptHead | null;
  readonly faults: Faults;
} {
  const kept = { seq: Number(seq.trim()), hash: hash.trim().toLowerCase() };
  const faults: Record<string, string> = {};
  if (!Number.isSafeInteger(kept.seq) || kept.seq < 1) faults.seq = journalWords.seqWrong;
  if (!/^[0-9a-f]{64}$/.test(kept.hash)) faults.hash = journalWords.hashWrong;
  return { value: Object.keys(faults).length === 0 ? kept : null, faults };
}
