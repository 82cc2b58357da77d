import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sliceSpan } from '../../hub/archive/slices.ts';
import type { ChannelReading } from '../../hub/contract/reading.ts';
import { addChannel, openTest, T0 } from './helpers.ts';
import { someReadings } from './reading-store.contract.ts';

describe('slices of a span', () => {
  it('cover it without hole or overlap, equal to the millisecond', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 1, max: 60 }), (length, count) => {
        const slices = sliceSpan(T0, T0 + length, count);
        const widths = slices.map((slice) => slice.until - slice.from);
        expect(slices[0]?.from).toBe(T0);
        expect(slices.at(-1)?.until).toBe(T0 + length + 1);
        expect(slices.slice(1).map((slice) => slice.from)).toEqual(
          slices.slice(0, -1).map((slice) => slice.until),
        );
        expect(Math.max(...widths) - Math.min(...widths)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('are whole numbers even at the end of time', () => {
    const end = 8_640_000_000_000_000;
    const slices = sliceSpan(0, end, 2000);
    expect(slices).toHaveLength(2000);
    expect(slices.every(({ from, until }) => Number.isSafeInteger(from) && from < until)).toBe(true);
    expect(slices.at(-1)?.until).toBe(end + 1);
  });
});

describe('thinning by slices', () => {
  it('keeps just the lowest and the highest value of each slice, against a plain walk', () => {
    fc.assert(
      fc.property(someReadings(), fc.integer({ min: 2, max: 30 }), (readings, points) => {
        fc.pre(readings.length > points);
        const archive = openTest();
        const channel = addChannel(archive);
        archive.readings.append(readings.map((reading) => ({ ...reading, channel: channel.id })));
        const shown = archive.readings.series(channel, T0, T0 + 1000, points).readings;
        expect(shown.map(({ value }) => value)).toEqual(plainThinning(readings, points));
      }),
      { numRuns: 80 },
    );
  });
});

function plainThinning(readings: Omit<ChannelReading, 'channel'>[], points: number): number[] {
  const good = readings.filter(({ quality }) => quality === 'good').sort((a, b) => a.at - b.at);
  const slices = Math.floor(points / 2);
  return Array.from({ length: slices }, (_, index) => {
    const first = T0 + Math.floor((index * 1001) / slices);
    const next = T0 + Math.floor(((index + 1) * 1001) / slices);
    const own = good.filter((reading) => reading.at >= first && reading.at < next);
    const byValue = own.toSorted((a, b) => a.value - b.value || a.at - b.at);
    const low = byValue[0];
    const high = byValue.toReversed().find((reading) => reading.value === byValue.at(-1)?.value);
    const highFirst = byValue.find((reading) => reading.value === high?.value);
    const kept = [low, highFirst].filter((reading) => reading !== undefined);
    return [...new Set(kept)].sort((a, b) => a.at - b.at).map((reading) => reading.value);
  }).flat();
}
