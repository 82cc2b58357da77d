import type { Gap } from '../contract/reading.ts';
import type { Context } from './context.ts';
import { ArchiveError } from './errors.ts';
import { GOOD } from './quality.ts';

export type FindGaps = (series: number, from: number, to: number, staleAfterMs: number) => readonly Gap[];

/**
 * Stretches inside [from, to] longer than `staleAfterMs` without a good reading, those at both ends included.
 *
 * The search leaps: from one good reading to the last good one within `staleAfterMs` of it, each a single step
 * in the primary key. So it takes (to - from) / staleAfterMs steps at most, however many readings lie between.
 *
 *     good ·  ·  · ·    ·                 ·  · ·
 *          └─leap──▶└leap▶└──── gap ─────▶└─leap▶
 */
export function gapPart({ db }: Context): FindGaps {
  const lastWithin = db
    .prepare<[number, number, number], number>(
      `SELECT at FROM readings WHERE series = ? AND at > ? AND at <= ? AND quality = ${GOOD}
       ORDER BY at DESC LIMIT 1`,
    )
    .pluck();
  const firstWithin = db
    .prepare<[number, number, number], number>(
      `SELECT at FROM readings WHERE series = ? AND at > ? AND at <= ? AND quality = ${GOOD}
       ORDER BY at LIMIT 1`,
    )
    .pluck();

  return (series, from, to, staleAfterMs) => {
    if (!(staleAfterMs > 0)) {
      throw new ArchiveError('invalid', `staleAfterMs must be above 0, got ${staleAfterMs}`);
    }
    const gaps: Gap[] = [];
    let seen = from;
    while (to - seen > staleAfterMs) {
      const near = lastWithin.get(series, seen, seen + staleAfterMs);
      if (near === undefined) {
        const after = firstWithin.get(series, seen + staleAfterMs, to) ?? to;
        gaps.push({ from: seen, to: after });
        seen = after;
      } else seen = near;
    }
    return gaps;
  };
}
