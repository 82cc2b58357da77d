import { describe, expect, it } from 'vitest';
import { toColumns } from '../../../dashboard/charts/columns.ts';
import { chartReadout, chartSummary } from '../../../dashboard/charts/summary.ts';
import type { ChartSeries } from '../../../dashboard/charts/types.ts';
import { good } from '../mock-shop.ts';

const START = Date.UTC(2026, 2, 14, 13, 0);
const MINUTE = 60_000;
const plan = [
  { at: START, celsius: 20, low: 10, high: 30 },
  { at: START + 60 * MINUTE, celsius: 620, low: 610, high: 630 },
];
const series: ChartSeries[] = [
  {
    label: 'Chamber',
    role: 'measured',
    readings: [good(START, 20), good(START + 10 * MINUTE, 118), good(START + 12 * MINUTE, 141)],
    gaps: [{ from: START + 12 * MINUTE, to: START + 30 * MINUTE }],
  },
];
const columns = toColumns(plan, series, 'Cel');

describe('a chart in words', () => {
  it('says what each curve did, where nothing was measured, and what is marked', () => {
    const marks = [{ at: START + 11 * MINUTE, shape: 'warning' as const, words: 'Ramp stalled' }];
    const window = { from: START, to: START + 60 * MINUTE };
    expect(chartSummary(columns, series, marks, { window, unit: 'Cel', timeZone: 'UTC' })).toBe(
      'Chart from 13:00 to 14:00, 1 h. Chamber: from 20 to 141 °C, last 141 °C. 1 gap without readings. Marked: 13:11 Ramp stalled.',
    );
  });

  it('speaks only of the window', () => {
    const window = { from: START, to: START + 10 * MINUTE };
    const text = chartSummary(columns, series, [], { window, unit: 'Cel', timeZone: 'UTC' });
    expect(text).toContain('from 20 to 118 °C');
    expect(text).not.toContain('gap');
  });

  it('reads the values at an instant, the plan between its points included', () => {
    const view = { reachMs: MINUTE, unit: 'Cel' as const, timeZone: 'UTC' };
    expect(chartReadout(columns, series, START + 10 * MINUTE, view)).toBe(
      '13:10:00 · planned 120 °C · Chamber 118 °C',
    );
    expect(chartReadout(columns, series, START + 20 * MINUTE, view)).toBe(
      '13:20:00 · planned 220 °C · Chamber no reading',
    );
  });
});
