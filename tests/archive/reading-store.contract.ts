import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReadingStore } from '../../hub/archive/types.ts';
import type { ChannelReading, Quality } from '../../hub/contract/reading.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { HOUR, SECOND, T0 } from './helpers.ts';

/** A store that is empty, with two channels that it knows; `staleAfterSeconds` of both is 20. */
export interface StoreUnderTest {
  readonly store: ReadingStore;
  readonly channel: Channel;
  readonly other: Channel;
}

function at(channel: Channel, seconds: number, value: number, quality: Quality = 'good'): ChannelReading {
  return { channel: channel.id, at: T0 + seconds * SECOND, value, quality };
}

/** What every store of readings must hold, however it keeps them. */
export function readingStoreContract(name: string, make: () => StoreUnderTest): void {
  describe(`${name}: keeping`, () => keeping(make));
  describe(`${name}: charts`, () => charts(make));
  describe(`${name}: gaps`, () => gaps(make));
}

function keeping(make: () => StoreUnderTest): void {
  it('gives back exactly what it was given, bit for bit, with quality and reason', () => {
    const { store, channel } = make();
    const values = [0.1 + 0.2, -0.25, 1e-9, 1820, 5e-324, Number.MAX_SAFE_INTEGER];
    const given = values.map((value, index) => at(channel, index, value));
    const faulty: ChannelReading = { ...at(channel, 10, 1e6, 'bad'), reason: 'out-of-range' };
    store.append([...given, faulty]);
    const kept = store.range(channel.id, T0, T0 + HOUR);
    expect(kept.map((reading) => reading.value)).toEqual([...values, 1e6]);
    expect(kept.at(-1)).toEqual({ at: faulty.at, value: 1e6, quality: 'bad', reason: 'out-of-range' });
    expect(kept[0]).toEqual({ at: T0, value: 0.1 + 0.2, quality: 'good' });
  });

  it('tells what it kept: minus zero becomes zero in both', () => {
    const { store, channel } = make();
    const told = store.append([at(channel, 0, -0)]);
    expect(told.map((reading) => reading.value)).toEqual([0]);
    expect(store.range(channel.id, T0, T0).map((reading) => reading.value)).toEqual([0]);
  });

  it('keeps one reading an instant: the first, in one call and in the next', () => {
    const { store, channel } = make();
    const first = store.append([at(channel, 0, 20), at(channel, 0, 21)]);
    const second = store.append([at(channel, 0, 22, 'bad'), at(channel, 1, 23)]);
    expect(first.map((reading) => reading.value)).toEqual([20]);
    expect(second.map((reading) => reading.value)).toEqual([23]);
    expect(store.range(channel.id, T0, T0).map((reading) => reading.value)).toEqual([20]);
  });

  it('puts readings in their place when they come in the wrong order, hours late', () => {
    const { store, channel } = make();
    store.append([at(channel, 7200, 3), at(channel, 7201, 4)]);
    const late = store.append([at(channel, 2, 2), at(channel, 1, 1)]);
    expect(late.map((reading) => reading.value)).toEqual([2, 1]);
    expect(store.range(channel.id, T0, T0 + 3 * HOUR).map((reading) => reading.value)).toEqual([1, 2, 3, 4]);
    expect(store.latest(channel.id)?.value).toBe(4);
  });

  it('does not mix channels', () => {
    const { store, channel, other } = make();
    store.append([at(channel, 0, 1), at(other, 0, 2)]);
    expect(store.range(channel.id, T0, T0).map((reading) => reading.value)).toEqual([1]);
    expect(store.range(other.id, T0, T0).map((reading) => reading.value)).toEqual([2]);
  });

  it('includes both ends of a range, and nothing outside', () => {
    const { store, channel } = make();
    store.append([0, 1, 2, 3].map((second) => at(channel, second, second)));
    const kept = store.range(channel.id, T0 + SECOND, T0 + 2 * SECOND);
    expect(kept.map((reading) => reading.value)).toEqual([1, 2]);
    expect(store.range(channel.id, T0 + 1, T0 + 2)).toEqual([]);
  });

  it('knows no latest before the first, and does not let the future hide the present', () => {
    const { store, channel } = make();
    const ahead: ChannelReading = { ...at(channel, 86_400, 5, 'uncertain'), reason: 'future' };
    expect(store.latest(channel.id)).toBeNull();
    store.append([ahead]);
    expect(store.latest(channel.id)?.reason).toBe('future');
    store.append([at(channel, 0, 20), at(channel, 1, 900, 'bad')]);
    expect(store.latest(channel.id)).toEqual({ at: T0 + SECOND, value: 900, quality: 'bad' });
  });

  it('keeps nothing of a call that names a channel nobody knows', () => {
    const { store, channel } = make();
    const stray = { ...at(channel, 1, 1), channel: 'no-such-channel' };
    expect(() => store.append([at(channel, 0, 1), stray])).toThrow(
      expect.objectContaining({ code: 'not-found' }),
    );
    expect(store.range(channel.id, T0, T0 + HOUR)).toEqual([]);
  });

  it('keeps nothing of a call with a value that is not a number', () => {
    const { store, channel } = make();
    expect(() => store.append([at(channel, 0, 1), at(channel, 1, Number.NaN)])).toThrow(
      expect.objectContaining({ code: 'invalid' }),
    );
    expect(store.range(channel.id, T0, T0 + HOUR)).toEqual([]);
  });
}

function charts(make: () => StoreUnderTest): void {
  it('gives every reading, the bad ones too, while they fit', () => {
    const { store, channel } = make();
    store.append([at(channel, 0, 1), at(channel, 1, 2, 'bad'), at(channel, 2, 3)]);
    const series = store.series(channel, T0, T0 + 10 * SECOND, 3);
    expect(series).toMatchObject({ channel: channel.id, unit: 'Cel', total: 3, thinned: false });
    expect(series.readings.map((reading) => reading.value)).toEqual([1, 2, 3]);
  });

  it('thins to the points asked for, and never shows a bad reading as a peak', () => {
    const { store, channel } = make();
    const wave = Array.from({ length: 500 }, (_, second) => at(channel, second, Math.sin(second)));
    store.append([...wave, { ...at(channel, 250.5, 9999, 'bad') }, at(channel, 250.6, -9999, 'uncertain')]);
    const series = store.series(channel, T0, T0 + 500 * SECOND, 40);
    expect(series).toMatchObject({ total: 502, thinned: true });
    expect(series.readings.length).toBeLessThanOrEqual(40);
    expect(series.readings.every((reading) => reading.quality === 'good')).toBe(true);
  });

  it('never answers with more than 4000 points, whatever is asked', () => {
    const { store, channel } = make();
    store.append(Array.from({ length: 5000 }, (_, second) => at(channel, second, second)));
    const series = store.series(channel, T0, T0 + 2 * HOUR, 1_000_000);
    expect(series.readings.length).toBeLessThanOrEqual(4000);
    expect(series).toMatchObject({ total: 5000, thinned: true });
  });

  it('keeps a spike of one sample out of many thousands', () => {
    const { store, channel } = make();
    const flat = Array.from({ length: 20_000 }, (_, index) =>
      at(channel, index, index === 12_345 ? 999 : 20),
    );
    store.append(flat);
    const series = store.series(channel, T0, T0 + 20_000 * SECOND, 100);
    expect(series.readings).toContainEqual({ at: T0 + 12_345 * SECOND, value: 999, quality: 'good' });
  });

  it('keeps the lowest and the highest good reading of any span, in time order', () => {
    fc.assert(
      fc.property(someReadings(), fc.integer({ min: 2, max: 30 }), (readings, points) => {
        const { store, channel } = make();
        store.append(readings.map((reading) => ({ ...reading, channel: channel.id })));
        const from = T0 + 100;
        const to = T0 + 900;
        const inside = readings.filter((reading) => reading.at >= from && reading.at <= to);
        const good = inside.filter((reading) => reading.quality === 'good');
        const { readings: shown, total, thinned } = store.series(channel, from, to, points);
        const values = shown.filter(({ quality }) => quality === 'good').map(({ value }) => value);
        const times = shown.map((reading) => reading.at);
        expect(total).toBe(inside.length);
        expect(thinned).toBe(inside.length > points);
        expect(shown.length).toBeLessThanOrEqual(points);
        expect(times).toEqual([...new Set(times)].sort((a, b) => a - b));
        expect(Math.max(...values)).toBe(Math.max(...good.map(({ value }) => value)));
        expect(Math.min(...values)).toBe(Math.min(...good.map(({ value }) => value)));
      }),
      { numRuns: 25 },
    );
  });
}

/** Readings at distinct instants within a second of T0, in any order. */
export function someReadings(): fc.Arbitrary<Omit<ChannelReading, 'channel'>[]> {
  return fc.uniqueArray(
    fc.record({
      at: fc.integer({ min: T0, max: T0 + 1000 }),
      value: fc
        .oneof(fc.integer({ min: -5, max: 5 }), fc.double({ noNaN: true, noDefaultInfinity: true }))
        .map((value) => value + 0),
      quality: fc.constantFrom<Quality>('good', 'good', 'good', 'uncertain', 'bad'),
    }),
    { selector: (reading) => reading.at, maxLength: 120 },
  );
}

function gaps(make: () => StoreUnderTest): void {
  const stale = 20 * SECOND;

  it('finds the silence between two readings, and none where they come in time', () => {
    const { store, channel } = make();
    store.append([0, 10, 30, 51, 60].map((second) => at(channel, second, 20)));
    const found = store.gaps(channel.id, T0, T0 + 60 * SECOND, stale);
    expect(found).toEqual([{ from: T0 + 30 * SECOND, to: T0 + 51 * SECOND }]);
  });

  it('counts a silence of exactly the limit as in time', () => {
    const { store, channel } = make();
    store.append([at(channel, 0, 20), at(channel, 20, 20)]);
    expect(store.gaps(channel.id, T0, T0 + 40 * SECOND, stale)).toEqual([]);
    expect(store.gaps(channel.id, T0, T0 + 40 * SECOND + 1, stale)).toEqual([
      { from: T0 + 20 * SECOND, to: T0 + 40 * SECOND + 1 },
    ]);
  });

  it('counts the beginning and the end of the span, and all of it when there is nothing', () => {
    const { store, channel, other } = make();
    store.append([at(channel, 100, 20)]);
    const span = [T0, T0 + 200 * SECOND] as const;
    expect(store.gaps(channel.id, ...span, stale)).toEqual([
      { from: T0, to: T0 + 100 * SECOND },
      { from: T0 + 100 * SECOND, to: T0 + 200 * SECOND },
    ]);
    expect(store.gaps(other.id, ...span, stale)).toEqual([{ from: T0, to: T0 + 200 * SECOND }]);
  });

  it('is not fooled by readings that are not good', () => {
    const { store, channel } = make();
    const broken = Array.from({ length: 59 }, (_, index) => at(channel, index + 1, 0, 'bad'));
    store.append([at(channel, 0, 20), ...broken, at(channel, 60, 20), at(channel, 61, 20, 'uncertain')]);
    const found = store.gaps(channel.id, T0, T0 + 61 * SECOND, stale);
    expect(found).toEqual([{ from: T0, to: T0 + 60 * SECOND }]);
  });

  it('shows the gaps with the chart, by what the channel calls old', () => {
    const { store, channel } = make();
    store.append([at(channel, 0, 20), at(channel, 100, 20)]);
    const { gaps: found } = store.series(channel, T0, T0 + 100 * SECOND, 10);
    expect(found).toEqual([{ from: T0, to: T0 + 100 * SECOND }]);
  });

  it('agrees with a walk over every reading', () => {
    fc.assert(
      fc.property(someReadings(), fc.integer({ min: 1, max: 400 }), (readings, staleMs) => {
        const { store, channel } = make();
        store.append(readings.map((reading) => ({ ...reading, channel: channel.id })));
        const from = T0 + 100;
        const to = T0 + 900;
        expect(store.gaps(channel.id, from, to, staleMs)).toEqual(walk(readings, from, to, staleMs));
      }),
      { numRuns: 25 },
    );
  });
}

function walk(readings: Omit<ChannelReading, 'channel'>[], from: number, to: number, staleMs: number) {
  const good = readings
    .filter((reading) => reading.quality === 'good' && reading.at >= from && reading.at <= to)
    .map((reading) => reading.at)
    .sort((a, b) => a - b);
  const marks = [from, ...good, to];
  return marks
    .slice(1)
    .map((mark, index) => ({ from: marks[index] ?? from, to: mark }))
    .filter((stretch) => stretch.to - stretch.from > staleMs);
}
