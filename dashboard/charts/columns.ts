import type { PlanPoint } from '../../hub/contract/firing.ts';
import type { Gap } from '../../hub/contract/reading.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase } from '../../hub/contract/units.ts';
import { unitNamed } from '../words/format.ts';
import type { ChartSeries, TimeWindow } from './types.ts';

/**
 * The chart gets columns that share one time axis. In a column, `undefined` is "no point here" (the line goes
 * on) and `null` is "nothing was measured" (the line breaks).
 */
export type Cell = number | null | undefined;

export interface Columns {
  /** Epoch ms, rising strictly. */
  readonly at: number[];
  readonly high: Cell[];
  readonly low: Cell[];
  readonly plan: Cell[];
  /** One column a series, in the order given. */
  readonly curves: Cell[][];
}

type Points = readonly (readonly [at: number, value: number | null])[];

/** Columns in the display unit. Only good readings are points: what is not judged draws no line. */
export function toColumns(
  plan: readonly PlanPoint[],
  series: readonly ChartSeries[],
  unit: DisplayUnit,
): Columns {
  const shown = unitNamed(unit);
  const convert = (celsius: number) => fromBase(celsius, shown);
  const steps = spread(plan);
  const tables: Points[] = [
    steps.map((point) => [point.at, convert(point.high)]),
    steps.map((point) => [point.at, convert(point.low)]),
    steps.map((point) => [point.at, convert(point.celsius)]),
    ...series.map((curve) => curvePoints(curve, convert)),
  ];
  const at = [...new Set(tables.flatMap((table) => table.map(([instant]) => instant)))].sort((a, b) => a - b);
  const place = new Map(at.map((instant, index) => [instant, index]));
  const [high = [], low = [], middle = [], ...curves] = tables.map((table) =>
    column(table, place, at.length),
  );
  // A plan has a few corners: between them it has a value at every instant, or its band would lose its fill when
  // somebody looks closely between two of them.
  return { at, high: joined(at, high), low: joined(at, low), plan: joined(at, middle), curves };
}

/** Two points of a plan may share an instant (a quench): the second is moved on by a millisecond. */
function spread(plan: readonly PlanPoint[]): PlanPoint[] {
  let last = Number.NEGATIVE_INFINITY;
  return plan.map((point) => {
    const at = Math.max(point.at, last + 1);
    last = at;
    return at === point.at ? point : { ...point, at };
  });
}

function curvePoints(curve: ChartSeries, convert: (celsius: number) => number): Points {
  const good: [number, number | null][] = curve.readings
    .filter((reading) => reading.quality === 'good')
    .map((reading) => [reading.at, convert(reading.value)]);
  const breaks: [number, number | null][] = curve.gaps.map((gap) => [breakAt(gap), null]);
  return [...good, ...breaks].sort(([a], [b]) => a - b);
}

/** One null inside the gap is enough to break the line; its ends may carry readings. */
function breakAt(gap: Gap): number {
  return Math.floor((gap.from + gap.to) / 2);
}

function column(table: Points, place: ReadonlyMap<number, number>, length: number): Cell[] {
  const cells: Cell[] = new Array<Cell>(length).fill(undefined);
  for (const [at, value] of table) {
    const index = place.get(at);
    if (index !== undefined) cells[index] = value;
  }
  return cells;
}

/** The straight lines between the cells that say something, at every instant between them. */
function joined(at: readonly number[], cells: readonly Cell[]): Cell[] {
  const filled = [...cells];
  let last = -1;
  for (const [index, value] of cells.entries()) {
    if (typeof value !== 'number') continue;
    const start = cells[last];
    if (typeof start === 'number') fillBetween(at, filled, last, index);
    last = index;
  }
  return filled;
}

function fillBetween(at: readonly number[], cells: Cell[], from: number, to: number): void {
  const [first, second] = [cells[from], cells[to]];
  const [start, end] = [at[from] ?? 0, at[to] ?? 0];
  if (typeof first !== 'number' || typeof second !== 'number') return;
  for (let index = from + 1; index < to; index += 1) {
    cells[index] = first + ((second - first) * ((at[index] ?? start) - start)) / (end - start);
  }
}

/**
 * Lowest and highest value to show for a window, with room around; at least 20 units apart.
 *
 * @param headroom share of the height kept free at the top for marks, 0 to below 1
 */
export function valueRange(
  columns: Columns,
  window: TimeWindow,
  headroom = 0,
): { low: number; high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const first = columns.at.findIndex((at) => at >= window.from);
  const end = columns.at.findLastIndex((at) => at <= window.to);
  // One point more on each side: a long straight plan may have no point inside a narrow window.
  for (let index = Math.max(0, first - 1); index <= Math.min(columns.at.length - 1, end + 1); index += 1) {
    for (const cells of [columns.high, columns.low, columns.plan, ...columns.curves]) {
      const value = cells[index];
      if (typeof value !== 'number') continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  }
  if (low > high) return { low: 0, high: 100 };
  const room = Math.max(10, (high - low) * 0.06);
  return { low: low - room, high: high + room + ((high - low + 2 * room) * headroom) / (1 - headroom) };
}

/**
 * The value of a drawn line at an instant: the nearer of the two readings that the line joins. Null inside a
 * gap, and beyond the first or last reading by more than `reachMs`: a curve says nothing where it is not drawn.
 */
export function valueAt(
  columns: Columns,
  cells: readonly Cell[],
  at: number,
  reachMs: number,
): number | null {
  const before = neighbour(columns, cells, at, -1);
  const after = neighbour(columns, cells, at, 1);
  const distance = (index: number) => Math.abs((columns.at[index] ?? Number.NaN) - at);
  if (before === null || after === null) {
    const only = before ?? after;
    return only !== null && distance(only) <= reachMs ? (cells[only] ?? null) : null;
  }
  if (cells[before] === null || cells[after] === null) {
    const exact = [before, after].find((index) => distance(index) <= reachMs && cells[index] !== null);
    return exact === undefined ? null : (cells[exact] ?? null);
  }
  return cells[distance(before) <= distance(after) ? before : after] ?? null;
}

/** Index of the nearest cell that says something, at or before (-1) or at or after (1) an instant. */
function neighbour(columns: Columns, cells: readonly Cell[], at: number, side: -1 | 1): number | null {
  let index =
    side < 0
      ? columns.at.findLastIndex((instant) => instant <= at)
      : columns.at.findIndex((instant) => instant >= at);
  while (index >= 0 && index < cells.length && cells[index] === undefined) index += side;
  return index >= 0 && index < cells.length ? index : null;
}
