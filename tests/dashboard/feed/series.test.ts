import { describe, expect, it } from 'vitest';
import { gapsUntil, withReading } from '../../../dashboard/feed/series.ts';
import type { ReadingSeries } from '../../../hub/contract/reading.ts';
import { good } from '../mock-shop.ts';

const STALE_MS = 20_000;

function series(change: Partial<ReadingSeries> = {}): ReadingSeries {
  const readings = [good(1000, 20), good(6000, 30), good(11_000, 40)];
  return {
    channel: 'c',
    unit: 'Cel',
    from: 0,
    to: 11_000,
    total: 3,
    thinned: false,
    readings,
    gaps: [],
    ...change,
  };
}

const times = (of: ReadingSeries) => of.readings.map((reading) => reading.at);

describe('a series that grows', () => {
  it('puts a late reading in its place and keeps an instant once', () => {
    const grown = withReading(series(), good(8000, 35), STALE_MS);
    expect(times(grown)).toEqual([1000, 6000, 8000, 11_000]);
    expect(withReading(grown, good(8000, 36), STALE_MS)).toBe(grown);
  });

  it('leaves a gap where nothing was heard for too long, and none where it was not', () => {
    expect(withReading(series(), good(31_000, 50), STALE_MS).gaps).toEqual([]);
    expect(withReading(series(), good(31_001, 50), STALE_MS).gaps).toEqual([{ from: 11_000, to: 31_001 }]);
  });

  it('carries an open gap on until something is seen again', () => {
    const open = series({ to: 60_000, gaps: [{ from: 11_000, to: 60_000 }] });
    expect(withReading(open, good(75_000, 50), STALE_MS).gaps).toEqual([{ from: 11_000, to: 75_000 }]);
  });

  it('splits or closes a gap when the node sends what it had kept', () => {
    const gap = series({ to: 100_000, gaps: [{ from: 11_000, to: 60_000 }] });
    const split = withReading(gap, good(20_000, 45), STALE_MS);
    expect(split.gaps).toEqual([{ from: 20_000, to: 60_000 }]);
    expect(withReading(split, good(40_000, 45), STALE_MS).gaps).toEqual([]);
  });

  it('does not count a bad reading as sight', () => {
    const bad = { at: 90_000, value: 9999, quality: 'bad' as const };
    const grown = withReading(series(), bad, STALE_MS);
    expect(times(grown)).toContain(90_000);
    expect(gapsUntil(grown, 95_000, STALE_MS)).toEqual([{ from: 11_000, to: 95_000 }]);
  });

  it('shows a gap that is still open up to now, and none while it is fresh', () => {
    expect(gapsUntil(series(), 30_000, STALE_MS)).toEqual([]);
    expect(gapsUntil(series(), 40_000, STALE_MS)).toEqual([{ from: 11_000, to: 40_000 }]);
    const open = series({ to: 60_000, gaps: [{ from: 11_000, to: 60_000 }] });
    expect(gapsUntil(open, 70_000, STALE_MS)).toEqual([{ from: 11_000, to: 70_000 }]);
  });
});
