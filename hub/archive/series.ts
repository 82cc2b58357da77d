import type { Gap, Reading, ReadingSeries } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import type { Context } from './context.ts';
import type { FindGaps } from './gaps.ts';
import { GOOD, type StoredReading, toReading } from './quality.ts';
import { type Slice, sliceSpan } from './slices.ts';

/** A wide screen has 3840 columns: more points than this cannot be seen, and would only fill memory. */
export const MOST_POINTS = 4000;
/** As many as can be drawn. Beyond, the longest are kept. */
export const MOST_GAPS = 2000;

type FindSeries = (
  channel: Channel,
  series: number,
  from: number,
  to: number,
  points: number,
) => ReadingSeries;

/** A slice's extreme: SQLite takes `at` from the row that holds the min() or max() (lang_select.html). */
function extremeSql(extreme: 'min' | 'max'): string {
  return `SELECT at, ${extreme}(value) AS value FROM readings
    WHERE series = ? AND at >= ? AND at < ? AND quality = ${GOOD}`;
}

/**
 * Readings for a chart. Thinning asks SQLite for the lowest and the highest of each slice, slice by slice:
 * each is a walk along the primary key, and nothing but the extremes comes into memory. (One GROUP BY over all
 * slices has to sort every reading, and is several times slower.)
 */
export function seriesPart({ db }: Context, findGaps: FindGaps): FindSeries {
  const count = db
    .prepare<[number, number, number], number>(
      'SELECT count(*) FROM readings WHERE series = ? AND at BETWEEN ? AND ?',
    )
    .pluck();
  const range = db.prepare<[number, number, number], StoredReading>(
    'SELECT at, value, quality, reason FROM readings WHERE series = ? AND at BETWEEN ? AND ? ORDER BY at',
  );
  type Extreme = { at: number | null; value: number | null };
  const lowest = db.prepare<[number, number, number], Extreme>(extremeSql('min'));
  const highest = db.prepare<[number, number, number], Extreme>(extremeSql('max'));

  function extremes(series: number, slice: Slice): Reading[] {
    const found = [lowest, highest].flatMap((query) => {
      const row = query.get(series, slice.from, slice.until);
      return row && row.at !== null && row.value !== null
        ? [{ at: row.at, value: row.value, quality: 'good' as const }]
        : [];
    });
    const [low, high] = found;
    if (!(low && high)) return found;
    if (low.at === high.at) return [low];
    return low.at < high.at ? [low, high] : [high, low];
  }

  return (channel, series, from, to, points) => {
    const wanted = Math.min(MOST_POINTS, Math.max(2, Math.floor(points)));
    const total = count.get(series, from, to) ?? 0;
    const thinned = total > wanted;
    const readings = thinned
      ? sliceSpan(from, to, Math.floor(wanted / 2)).flatMap((slice) => extremes(series, slice))
      : range.all(series, from, to).map(toReading);
    const gaps = longest(findGaps(series, from, to, channel.staleAfterSeconds * 1000));
    return { channel: channel.id, unit: channel.baseUnit, from, to, total, thinned, readings, gaps };
  };
}

function longest(gaps: readonly Gap[]): Gap[] {
  if (gaps.length <= MOST_GAPS) return [...gaps];
  return [...gaps]
    .sort((a, b) => b.to - b.from - (a.to - a.from))
    .slice(0, MOST_GAPS)
    .sort((a, b) => a.from - b.from);
}
