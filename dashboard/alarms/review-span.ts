import { reviewWords } from '../words/alarm-review.ts';

/** The stretch of time that a review looks at. Pure. */

export const SPAN_CHOICES = ['day', 'week', 'month', 'quarter', 'own'] as const;
export type SpanChoice = (typeof SPAN_CHOICES)[number];

export interface SpanTexts {
  readonly choice: SpanChoice;
  /** "2026-11-01", in the screen's own time. */
  readonly fromDay: string;
  readonly toDay: string;
}

export type ReviewSpan =
  | { readonly from: number; readonly to: number; readonly wrong: null }
  | { readonly wrong: string };

const DAY_MS = 86_400_000;
const DAYS: Readonly<Record<Exclude<SpanChoice, 'own'>, number>> = {
  day: 1,
  week: 7,
  month: 30,
  quarter: 90,
};
/** What the hub answers at most. */
const MOST_DAYS = 400;

/** Epoch ms. `startOf` gives the first instant of a day of the screen's calendar; NaN for what is no day. */
export function reviewSpan(
  { choice, fromDay, toDay }: SpanTexts,
  nowMs: number,
  startOf: (day: string, plusDays: number) => number = startOfDay,
): ReviewSpan {
  if (choice !== 'own') return { from: nowMs - DAYS[choice] * DAY_MS, to: nowMs, wrong: null };
  const from = startOf(fromDay, 0);
  // A day that has not ended ends now: what is not yet cannot be looked back upon.
  const to = Math.min(startOf(toDay, 1), nowMs);
  if (!(from < to)) return { wrong: reviewWords.spanWrong };
  if (to - from > MOST_DAYS * DAY_MS) return { wrong: reviewWords.spanLong };
  return { from, to, wrong: null };
}

function startOfDay(day: string, plusDays: number): number {
  const [year = Number.NaN, month = Number.NaN, date = Number.NaN] = day.split('-').map(Number);
  // By the calendar, so that a day with a change of the clocks keeps its 23 or 25 hours.
  return new Date(year, month - 1, date + plusDays).getTime();
}

/** "2026-11-25" of an instant in the screen's own time. */
export function dayOf(atMs: number): string {
  const date = new Date(atMs);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
