/**
 * What other probes did since some moment, in constant space: first, lowest,
 * highest and newest value of each.
 */

export interface Span {
  readonly first: number;
  readonly low: number;
  readonly high: number;
  readonly now: number;
}

export type Spans = Readonly<Record<string, Span>>;

/** Usable values of other probes by name, °C. */
export type OtherProbes = Readonly<Record<string, number>>;

/** Carries the spans on. A probe that is not heard of any more is dropped: it proves nothing. */
export function follow(spans: Spans, others: OtherProbes): Spans {
  const next: Record<string, Span> = {};
  for (const [name, value] of Object.entries(others)) {
    if (!Number.isFinite(value)) continue;
    const known = spans[name];
    next[name] = {
      first: known?.first ?? value,
      low: Math.min(known?.low ?? value, value),
      high: Math.max(known?.high ?? value, value),
      now: value,
    };
  }
  return next;
}

/** Largest of a measure over all probes; -Infinity when there is none. */
export function largest(spans: Spans, measure: (span: Span) => number): number {
  return Math.max(-Infinity, ...Object.values(spans).map(measure));
}
