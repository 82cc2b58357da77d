import type { AlarmTransition } from '../contract/alarm-journal.ts';
import { isAnnounced } from './flood.ts';

/** How long people took to acknowledge. */

export interface AnswerTimes {
  /** From the announcement to the acknowledgement, ms, rising. */
  readonly answeredMs: readonly number[];
  /** Announced and never acknowledged in the journal given: still open, or set aside instead. */
  readonly unanswered: number;
}

/** Times to acknowledge in a stretch of the journal, in order. An alarm announced again counts from then. */
export function answerTimes(journal: readonly AlarmTransition[]): AnswerTimes {
  const waiting = new Map<string, number>();
  const answeredMs: number[] = [];
  let announced = 0;
  for (const transition of journal) {
    const { alarmId, event, at } = transition;
    if (isAnnounced(transition)) {
      announced += 1;
      waiting.set(alarmId, at);
    }
    const since = waiting.get(alarmId);
    if (event === 'acknowledge' && since !== undefined) {
      answeredMs.push(at - since);
      waiting.delete(alarmId);
    }
  }
  answeredMs.sort((a, b) => a - b);
  return { answeredMs, unanswered: announced - answeredMs.length };
}

/**
 * The value below which a share of rising values lies: position share × (n + 1), between two by interpolation
 * (NIST/SEMATECH e-Handbook 7.2.6.2). Null for none. @param share 0 to 1
 */
export function percentile(rising: readonly number[], share: number): number | null {
  const position = Math.min(Math.max(share * (rising.length + 1), 1), rising.length);
  const below = rising[Math.floor(position) - 1];
  if (below === undefined) return null;
  const above = rising[Math.floor(position)] ?? below;
  return below + (position - Math.floor(position)) * (above - below);
}
