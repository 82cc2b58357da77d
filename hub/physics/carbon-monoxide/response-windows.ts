/**
 * Response windows of the standards for household carbon monoxide alarms.
 *
 * Those standards leave workplaces out, and such an alarm may stay silent for
 * four hours at 70 ppm, above several workplace limits. Its silence is no
 * evidence; the limits of limits.ts speak on their own, always.
 */
import type { Provenance } from './provenance.ts';

export const ALARM_STANDARDS = ['en-50291-1', 'ul-2034', 'csa-6.19'] as const;
export type AlarmStandard = (typeof ALARM_STANDARDS)[number];

/** One test level: no alarm before, an alarm by. */
export interface ResponseWindow {
  readonly ppm: number;
  /** 0 where an alarm may come at once. */
  readonly notBeforeMinutes: number;
  /** null where no alarm is required. */
  readonly byMinutes: number | null;
}

const DAY_MINUTES = 1440;

const EN_50291: readonly ResponseWindow[] = [
  { ppm: 30, notBeforeMinutes: 120, byMinutes: null },
  { ppm: 50, notBeforeMinutes: 60, byMinutes: 90 },
  { ppm: 100, notBeforeMinutes: 10, byMinutes: 40 },
  { ppm: 300, notBeforeMinutes: 0, byMinutes: 3 },
];

const UL_2034: readonly ResponseWindow[] = [
  { ppm: 30, notBeforeMinutes: 30 * DAY_MINUTES, byMinutes: null },
  { ppm: 70, notBeforeMinutes: 60, byMinutes: 240 },
  { ppm: 150, notBeforeMinutes: 10, byMinutes: 50 },
  { ppm: 400, notBeforeMinutes: 4, byMinutes: 15 },
];

export interface AlarmStandardTable {
  readonly windows: readonly ResponseWindow[];
  readonly from: Provenance;
}

const TABLES: Readonly<Record<AlarmStandard, AlarmStandardTable>> = {
  'en-50291-1': {
    windows: EN_50291,
    from: { standing: 'published-secondary', source: 'EN 50291-1, in two independent public summaries' },
  },
  'ul-2034': {
    windows: UL_2034,
    from: { standing: 'published-secondary', source: 'UL 2034, in several public summaries' },
  },
  'csa-6.19': {
    windows: UL_2034,
    from: {
      standing: 'published-secondary',
      source: 'CSA 6.19-01, in one public comparison',
      note: 'the table of the current CSA 6.19:17 was not seen',
    },
  },
};

/** The windows of a standard, lowest level first, and how they are known. */
export function responseWindows(standard: AlarmStandard): AlarmStandardTable {
  return TABLES[standard];
}

/**
 * Where an alarm time lies in a window. `null` minutes: no alarm came while `watchedMinutes` passed.
 * - `kept`: not too early, and in time where one is required
 * - `too-early`, `too-late`
 * - `open`: the watch ended before either could be told
 */
export type WindowVerdict = 'kept' | 'too-early' | 'too-late' | 'open';

/** Judges one test run against one row. */
export function windowVerdict(
  window: ResponseWindow,
  alarmMinutes: number | null,
  watchedMinutes: number,
): WindowVerdict {
  if (alarmMinutes !== null && alarmMinutes < window.notBeforeMinutes) return 'too-early';
  if (window.byMinutes === null) {
    return alarmMinutes !== null || watchedMinutes >= window.notBeforeMinutes ? 'kept' : 'open';
  }
  if (alarmMinutes !== null) return alarmMinutes <= window.byMinutes ? 'kept' : 'too-late';
  return watchedMinutes > window.byMinutes ? 'too-late' : 'open';
}
