/** How often the 80 % band holds the truth, by horizon. */
import { type Forecaster, observe, startForecaster } from '../../../hub/physics/forecast/forecaster.ts';
import { outlookAt } from '../../../hub/physics/forecast/outlook.ts';
import { type Firing, PLACES, type Place, type Publishing, published, TRAITS } from './firings.ts';

export const HORIZONS = [30, 60, 120, 300] as const;

/** Whether what happens at the horizon could be foreseen from the readings at all. */
export type Stretch = 'heated' | 'cooling' | 'into-cooling';

/** Hits and misses of one cell of the table. */
export interface Tally {
  readonly tries: number;
  readonly held: number;
  readonly width: number;
  readonly miss: number;
}

const EMPTY: Tally = { tries: 0, held: 0, width: 0, miss: 0 };
/** A forecaster that has just begun knows nothing yet, and says so with its band. */
const WARM_UP_SECONDS = 120;

export type Coverage = Map<string, Tally[]>;

/** Adds one firing to the table, a row for each furnace, place and stretch. */
export function addCoverage(
  table: Coverage,
  firing: Firing,
  how: Publishing,
  originEverySeconds: number,
): Coverage {
  for (const place of PLACES) addPlace(table, firing, place, how, originEverySeconds);
  return table;
}

function addPlace(table: Coverage, firing: Firing, place: Place, how: Publishing, every: number): void {
  let forecaster: Forecaster | null = null;
  let lastOrigin = Number.NEGATIVE_INFINITY;
  for (const reading of published(firing.readings[place], how)) {
    forecaster = forecaster === null ? startForecaster(TRAITS[place], reading) : observe(forecaster, reading);
    if (reading.atMs - lastOrigin < every * 1000) continue;
    if (reading.atMs - forecaster.sinceMs < WARM_UP_SECONDS * 1000) continue;
    lastOrigin = reading.atMs;
    HORIZONS.forEach((horizon, i) => {
      if (forecaster !== null) judge(table, firing, place, forecaster, horizon, i);
    });
  }
}

function judge(
  table: Coverage,
  firing: Firing,
  place: Place,
  forecaster: Forecaster,
  horizon: number,
  column: number,
): void {
  const from = truthAt(firing, forecaster.atMs);
  const then = truthAt(firing, forecaster.atMs + horizon * 1000);
  const stretch = stretchOf(from?.segment ?? null, then?.segment ?? null);
  if (then === undefined || stretch === null) return;
  const { low, high, celsius } = outlookAt(forecaster, then.atMs);
  const truth = then[place];
  const key = `${firing.wish.plan.furnace} ${place} ${stretch}`;
  const row = table.get(key) ?? HORIZONS.map(() => EMPTY);
  row[column] = added(row[column] ?? EMPTY, {
    tries: 1,
    held: truth >= low && truth <= high ? 1 : 0,
    width: high - low,
    miss: Math.abs(truth - celsius),
  });
  table.set(key, row);
}

function truthAt(firing: Firing, atMs: number) {
  const first = firing.truth[0]?.atMs ?? 0;
  return firing.truth[Math.round((atMs - first) / 1000)];
}

function stretchOf(from: number | null, then: number | null): Stretch | null {
  if (from === null || then === null) return null;
  if (from >= 2) return 'cooling';
  return then >= 2 ? 'into-cooling' : 'heated';
}

export function added(one: Tally, two: Tally): Tally {
  return {
    tries: one.tries + two.tries,
    held: one.held + two.held,
    width: one.width + two.width,
    miss: one.miss + two.miss,
  };
}

/** The rows that a pattern picks, added up: one tally for each horizon. */
export function summed(table: Coverage, pattern: RegExp): readonly Tally[] {
  const rows = [...table].filter(([key]) => pattern.test(key)).map(([, row]) => row);
  return HORIZONS.map((_, i) => rows.reduce((sum, row) => added(sum, row[i] ?? EMPTY), EMPTY));
}

export function heldShare(tally: Tally): number {
  return tally.held / tally.tries;
}
