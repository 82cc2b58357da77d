import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { chartWords, type ReadoutPart, readoutWords, summaryWords } from '../words/charts.ts';
import { timeOfDay, timeOfDaySeconds } from '../words/time.ts';
import { type Cell, type Columns, valueAt } from './columns.ts';
import type { ChartMark, ChartSeries, TimeWindow } from './types.ts';

/** The chart's text alternative: what is drawn in this window, curve by curve. */
export function chartSummary(
  columns: Columns,
  series: readonly ChartSeries[],
  marks: readonly ChartMark[],
  view: { readonly window: TimeWindow; readonly unit: DisplayUnit; readonly timeZone?: string },
): string {
  const { window, unit, timeZone } = view;
  const inside = ({ at }: { at: number }) => at >= window.from && at <= window.to;
  return summaryWords(
    {
      unit,
      from: window.from,
      to: window.to,
      curves: series.map((curve, index) => ({
        label: curve.label,
        ...extremes(columns, columns.curves[index] ?? [], window),
      })),
      gaps: series
        .flatMap((curve) => curve.gaps)
        .filter((gap) => gap.to >= window.from && gap.from <= window.to).length,
      marks: marks.filter(inside).map((mark) => `${timeOfDay(mark.at, timeZone)} ${mark.words}`),
    },
    timeZone,
  );
}

/** The values at an instant as one line: time, plan, then each curve. */
export function chartReadout(
  columns: Columns,
  series: readonly ChartSeries[],
  at: number,
  view: { readonly reachMs: number; readonly unit: DisplayUnit; readonly timeZone?: string },
): string {
  const { reachMs, unit, timeZone } = view;
  const planned: ReadoutPart[] =
    columns.plan.length > 0 ? [{ label: chartWords.planned, value: planAt(columns, at) }] : [];
  const parts = series.map((curve, index) => ({
    label: curve.label,
    value: valueAt(columns, columns.curves[index] ?? [], at, reachMs),
  }));
  return readoutWords(timeOfDaySeconds(at, timeZone), [...planned, ...parts], unit);
}

/** The plan is straight between its points, so between them it is computed. Null outside it. */
function planAt(columns: Columns, at: number): number | null {
  const known = (cell: Cell): cell is number => typeof cell === 'number';
  const left = columns.plan.findLastIndex((cell, index) => known(cell) && (columns.at[index] ?? 0) <= at);
  const right = columns.plan.findIndex((cell, index) => known(cell) && (columns.at[index] ?? 0) >= at);
  const [low, high] = [columns.plan[left], columns.plan[right]];
  const [from, to] = [columns.at[left], columns.at[right]];
  if (!known(low) || !known(high) || from === undefined || to === undefined) return null;
  return to > from ? low + ((high - low) * (at - from)) / (to - from) : low;
}

function extremes(columns: Columns, cells: readonly Cell[], window: TimeWindow) {
  let lowest: number | null = null;
  let highest: number | null = null;
  let last: number | null = null;
  for (const [index, value] of cells.entries()) {
    const at = columns.at[index] ?? Number.NaN;
    if (typeof value !== 'number' || !(at >= window.from && at <= window.to)) continue;
    lowest = Math.min(lowest ?? value, value);
    highest = Math.max(highest ?? value, value);
    last = value;
  }
  return { lowest, highest, last };
}
