import type { Context } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { HotDay, HotDayStore } from './hot-day-types.ts';

const DAY_MS = 86_400_000;

export interface HotDayPart {
  readonly store: HotDayStore;
  /** Told of every new reading: one that comes late makes the days that it changes uncounted. */
  readonly noticed: (series: number, at: number) => void;
}

/**
 * Days counted against the limit of a probe. Intake tells every new reading, so the last counted day of each series
 * is kept in memory: for a reading of now the question costs one look into a map.
 */
export function hotDayPart({ db }: Context): HotDayPart {
  const seriesById = db.prepare<[string], number>('SELECT series FROM channels WHERE id = ?').pluck();
  const all = db.prepare<[number], HotDay>(
    `SELECT day, limit_celsius AS limitCelsius, ms_above AS msAbove, ms_unknown AS msUnknown,
       peak_celsius AS peakCelsius FROM hot_days WHERE series = ? ORDER BY day`,
  );
  const save = db.prepare(
    `INSERT INTO hot_days (series, day, limit_celsius, ms_above, ms_unknown, peak_celsius)
     VALUES (@series, @day, @limitCelsius, @msAbove, @msUnknown, @peakCelsius)
     ON CONFLICT (series, day) DO UPDATE SET limit_celsius = excluded.limit_celsius,
       ms_above = excluded.ms_above, ms_unknown = excluded.ms_unknown, peak_celsius = excluded.peak_celsius`,
  );
  const forget = db.prepare('DELETE FROM hot_days WHERE series = ? AND day BETWEEN ? AND ?');
  const first = db.prepare<[number], number | null>('SELECT min(at) FROM readings WHERE series = ?').pluck();
  const lastDays = db
    .prepare<[], { series: number; day: number }>(
      'SELECT series, max(day) AS day FROM hot_days GROUP BY series',
    )
    .all();
  const counted = new Map(lastDays.map(({ series, day }) => [series, day]));

  function seriesOf(channelId: string): number {
    const series = seriesById.get(channelId);
    if (series === undefined) throw new ArchiveError('not-found', `there is no channel "${channelId}"`);
    return series;
  }

  return {
    noticed(series, at) {
      const day = Math.floor(at / DAY_MS);
      // A stretch between two readings may reach over midnight, so its neighbours count again too.
      if (day <= (counted.get(series) ?? -1)) forget.run(series, day - 1, day + 1);
    },
    store: {
      hotDays: (channelId) => all.all(seriesOf(channelId)),
      saveHotDay(channelId, day) {
        const series = seriesOf(channelId);
        save.run({ ...day, series });
        counted.set(series, Math.max(day.day, counted.get(series) ?? day.day));
      },
      firstReadingAt: (channelId) => first.get(seriesOf(channelId)) ?? null,
    },
  };
}
