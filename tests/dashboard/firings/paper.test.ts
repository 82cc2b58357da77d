import { describe, expect, it } from 'vitest';
import type { ChartMark, ChartSeries } from '../../../dashboard/charts/types.ts';
import { bandPath, curvePath, scaleOf } from '../../../dashboard/firings/paper-geometry.ts';
import {
  forPaper,
  marksForPaper,
  paperBudget,
  textsForPaper,
} from '../../../dashboard/firings/paper-list.ts';
import { timeTicks, valueTicks } from '../../../dashboard/firings/paper-scale.ts';

const MINUTE = 60_000;
const FRAME = { left: 0, top: 0, width: 100, height: 100 };
const WINDOW = { from: 0, to: 100 };
const asIs = (value: number): number => value;
const series = (points: [number, number][], gaps: ChartSeries['gaps'] = []): ChartSeries => ({
  label: 'Chamber',
  role: 'measured',
  readings: points.map(([at, value]) => ({ at, value, quality: 'good' })),
  gaps,
});

describe('the chart on paper', () => {
  it('lifts its pen over a gap and never joins across it', () => {
    const curve = series(
      [
        [0, 0],
        [10, 10],
        [60, 10],
        [70, 0],
      ],
      [{ from: 10, to: 60 }],
    );
    const path = curvePath(curve, scaleOf(FRAME, WINDOW, { plan: [], series: [curve], show: asIs }), asIs);
    expect(path.match(/M/g)).toHaveLength(2);
    expect(path.match(/L/g)).toHaveLength(2);
  });

  it('draws nothing of readings that are not good', () => {
    const bad = { ...series([]), readings: [{ at: 50, value: 900, quality: 'bad' as const }] };
    const scale = scaleOf(FRAME, WINDOW, { plan: [], series: [bad], show: asIs });
    expect(curvePath(bad, scale, asIs)).toBe('');
    expect(scale.high).toBe(1);
  });

  it('closes the tolerance band around the plan', () => {
    const plan = [
      { at: 0, celsius: 10, low: 0, high: 20 },
      { at: 100, celsius: 10, low: 0, high: 20 },
    ];
    const scale = scaleOf(FRAME, WINDOW, { plan, series: [], show: asIs });
    // 6 % of room on each side of 0 to 20: the scale is -1.2 to 21.2.
    expect([scale.low, scale.high]).toEqual([-1.2, 21.2]);
    expect(bandPath(plan, scale, asIs)).toBe('M0 5.4L100 5.4L100 94.6L0 94.6Z');
    expect(bandPath([], scale, asIs)).toBe('');
  });

  it('puts round instants and values along its edges', () => {
    expect(timeTicks(61_000, 10 * MINUTE, 6)).toEqual([2, 4, 6, 8, 10].map((minute) => minute * MINUTE));
    expect(valueTicks(-13, 912, 6)).toEqual([0, 200, 400, 600, 800]);
    expect(valueTicks(0.24, 0.31, 7)).toEqual([0.24, 0.25, 0.26, 0.27, 0.28, 0.29, 0.3, 0.31]);
    expect(valueTicks(5, 5, 6)).toEqual([]);
  });
});

describe('what of a record goes on paper', () => {
  it('says how much it leaves out', () => {
    expect(forPaper([1, 2, 3], 2)).toEqual({ shown: [1, 2], more: 1 });
    expect(forPaper([1], 2)).toEqual({ shown: [1], more: 0 });
  });

  it('leaves out events before it leaves out a warning, and keeps the order of time', () => {
    const mark = (at: number, shape: ChartMark['shape']): ChartMark => ({ at, shape, words: shape });
    const { shown, more } = marksForPaper(
      [mark(1, 'event'), mark(2, 'event'), mark(3, 'danger'), mark(4, 'blind')],
      3,
    );
    expect(shown.map(({ at }) => at)).toEqual([1, 3, 4]);
    expect(more).toBe(1);
  });

  it('cuts notes so that all of them together fit, and marks the ones it cut', () => {
    expect(textsForPaper(['abcd', 'efgh', 'i'], 6)).toEqual([
      { text: 'abcd', cut: false },
      { text: 'ef', cut: true },
      { text: '', cut: true },
    ]);
  });

  it('gives the lists less room the more segments the table has', () => {
    const budgets = [3, 12, 24, 40].map((segments) => paperBudget(segments));
    expect(budgets.map(({ marks }) => marks)).toEqual([36, 24, 12, 12]);
    expect(budgets.map(({ rows }) => rows)).toEqual(['full', 'dense', 'dense', 'bare']);
  });

  it('gives room to the pieces of a load out of the lists', () => {
    const [without, loaded] = [paperBudget(4), paperBudget(4, 3)];
    expect(loaded.pieces).toBe(without.pieces);
    expect([loaded.marks, loaded.alarms, loaded.notes]).toEqual([18, 5, 4]);
  });
});
