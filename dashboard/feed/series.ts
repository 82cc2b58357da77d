import type { Gap, Reading, ReadingSeries } from '../../hub/contract/reading.ts';

/** A series that grows by one live reading. Late readings find their place; the same instant is kept once. */
export function withReading(series: ReadingSeries, reading: Reading, staleAfterMs: number): ReadingSeries {
  const { readings } = series;
  const place = readings.findLastIndex((other) => other.at <= reading.at);
  if (readings[place]?.at === reading.at) return series;
  const grown = [...readings.slice(0, place + 1), reading, ...readings.slice(place + 1)];
  const to = Math.max(series.to, reading.at);
  if (reading.quality !== 'good') return { ...series, readings: grown, to };
  return { ...series, readings: grown, to, gaps: withSight(series, reading.at, staleAfterMs) };
}

/** The gaps once something has been seen at `at`. */
function withSight(series: ReadingSeries, at: number, staleAfterMs: number): Gap[] {
  const isGap = (gap: Gap) => gap.to - gap.from > staleAfterMs;
  if (at <= series.to) {
    return series.gaps.flatMap((gap) =>
      at <= gap.from || at >= gap.to
        ? [gap]
        : [
            { from: gap.from, to: at },
            { from: at, to: gap.to },
          ].filter(isGap),
    );
  }
  // A gap that was still open where the series ended goes on until now.
  const open = series.gaps.findIndex((gap) => gap.to >= series.to);
  if (open >= 0) return series.gaps.map((gap, index) => (index === open ? { ...gap, to: at } : gap));
  const seen = series.readings.findLast((other) => other.quality === 'good')?.at ?? series.from;
  const silence = { from: seen, to: at };
  return isGap(silence) ? [...series.gaps, silence] : [...series.gaps];
}

/** The gaps to draw now: a series that has gone silent has an open gap up to this instant. */
export function gapsUntil(series: ReadingSeries, nowMs: number, staleAfterMs: number): Gap[] {
  const open = series.gaps.find((gap) => gap.to >= series.to);
  if (open) return series.gaps.map((gap) => (gap === open ? { ...gap, to: Math.max(gap.to, nowMs) } : gap));
  const seen = series.readings.findLast((other) => other.quality === 'good')?.at ?? series.from;
  return nowMs - seen > staleAfterMs ? [...series.gaps, { from: seen, to: nowMs }] : [...series.gaps];
}
