import type { ChannelReading, Reading } from '../contract/reading.ts';
import type { Context } from './context.ts';
import { ArchiveError } from './errors.ts';
import { gapPart } from './gaps.ts';
import { qualityCode, type StoredReading, toReading } from './quality.ts';
import { seriesPart } from './series.ts';
import type { ReadingStore } from './types.ts';

export interface ReadingPart {
  readonly store: ReadingStore;
  /** Keeps one reading under its series; false when that instant has one already, which stays. */
  readonly insert: (series: number, reading: Reading) => boolean;
  readonly latestOf: (series: number) => Reading | null;
}

/**
 * SQLite keeps -0 as 0. What watchers are told must be what a replay will read, so it becomes 0 before both.
 */
export function withoutMinusZero<T extends { readonly value: number }>(reading: T): T {
  return Object.is(reading.value, -0) ? { ...reading, value: 0 } : reading;
}

/** Readings as plain rows, one for each instant of a series. `noticed` is told of every one that is new. */
export function readingPart(
  context: Context,
  noticed: (series: number, at: number) => void = () => {},
): ReadingPart {
  const { db, write } = context;
  const seriesById = db.prepare<[string], number>('SELECT series FROM channels WHERE id = ?').pluck();
  // DO NOTHING is said of the one conflict meant: OR IGNORE would also swallow a NULL (that is, NaN) value.
  const add = db.prepare(
    `INSERT INTO readings (series, at, value, quality, reason) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (series, at) DO NOTHING`,
  );
  const range = db.prepare<[number, number, number], StoredReading>(
    'SELECT at, value, quality, reason FROM readings WHERE series = ? AND at BETWEEN ? AND ? ORDER BY at',
  );
  // A reading from the future must not hide the present for as long as it is ahead: it comes last.
  const newest = db.prepare<[number], StoredReading>(
    `SELECT at, value, quality, reason FROM readings
     WHERE series = ? AND reason IS NOT 'future' ORDER BY at DESC LIMIT 1`,
  );
  const newestAtAll = db.prepare<[number], StoredReading>(
    'SELECT at, value, quality, reason FROM readings WHERE series = ? ORDER BY at DESC LIMIT 1',
  );

  function seriesOf(channelId: string): number {
    const series = seriesById.get(channelId);
    if (series === undefined) throw new ArchiveError('not-found', `there is no channel "${channelId}"`);
    return series;
  }

  function insert(series: number, { at, value, quality, reason }: Reading): boolean {
    const isNew = add.run(series, at, value, qualityCode(quality), reason ?? null).changes > 0;
    if (isNew) noticed(series, at);
    return isNew;
  }

  function append(readings: readonly ChannelReading[]): readonly ChannelReading[] {
    const known = new Map<string, number>();
    return readings.map(withoutMinusZero).filter((reading) => {
      const series = known.get(reading.channel) ?? seriesOf(reading.channel);
      known.set(reading.channel, series);
      return insert(series, reading);
    });
  }

  function latestOf(series: number): Reading | null {
    const row = newest.get(series) ?? newestAtAll.get(series);
    return row ? toReading(row) : null;
  }

  const gaps = gapPart(context);
  const series = seriesPart(context, gaps);
  return {
    insert,
    latestOf,
    store: {
      append: (readings) => write(() => append(readings)),
      range: (channelId, from, to) => range.all(seriesOf(channelId), from, to).map(toReading),
      series: (channel, from, to, points) => series(channel, seriesOf(channel.id), from, to, points),
      gaps: (channelId, from, to, staleAfterMs) => gaps(seriesOf(channelId), from, to, staleAfterMs),
      latest: (channelId) => latestOf(seriesOf(channelId)),
    },
  };
}
