import { describe, expect, it } from 'vitest';
import { toColumns, valueAt, valueRange } from '../../../dashboard/charts/columns.ts';
import type { ChartSeries } from '../../../dashboard/charts/types.ts';
import { good } from '../mock-shop.ts';

const point = (at: number, celsius: number, tolerance = 10) => ({
  at,
  celsius,
  low: celsius - tolerance,
  high: celsius + tolerance,
});
const curve = (change: Partial<ChartSeries> = {}): ChartSeries => ({
  label: 'Chamber',
  role: 'measured',
  readings: [good(0, 20), good(1000, 30), good(5000, 70)],
  gaps: [],
  ...change,
});

describe('the columns of a chart', () => {
  it('share one time axis: no point is undefined, nothing measured is null', () => {
    const columns = toColumns(
      [point(0, 20), point(2000, 60)],
      [curve({ gaps: [{ from: 1000, to: 5000 }] })],
      'Cel',
    );
    expect(columns.at).toEqual([0, 1000, 2000, 3000, 5000]);
    expect(columns.plan).toEqual([20, 40, 60, undefined, undefined]);
    expect(columns.curves).toEqual([[20, 30, undefined, null, 70]]);
    expect(columns.high[0]).toBe(30);
  });

  it('give the plan and its band a value at every instant between its corners, so that a close look keeps the fill', () => {
    const columns = toColumns([point(0, 0), point(10_000, 100)], [curve()], 'Cel');
    expect(columns.at).toEqual([0, 1000, 5000, 10_000]);
    expect(columns.plan).toEqual([0, 10, 50, 100]);
    expect(columns.low).toEqual([-10, 0, 40, 90]);
    expect(columns.curves[0]?.[3]).toBeUndefined();
  });

  it('draws only what is good: neither faults nor readings from the future', () => {
    const readings = [
      good(0, 20),
      { at: 500, value: 1820, quality: 'bad' as const },
      { at: 9000, value: 21, quality: 'uncertain' as const },
    ];
    expect(toColumns([], [curve({ readings })], 'Cel').curves).toEqual([[20]]);
  });

  it('turns into the unit that is shown, tolerance and all', () => {
    const columns = toColumns([point(0, 100)], [], '[degF]');
    expect(columns.low[0]).toBeCloseTo(194, 9);
    expect(columns.plan[0]).toBeCloseTo(212, 9);
    expect(columns.high[0]).toBeCloseTo(230, 9);
  });

  it('lets a plan fall straight down, one millisecond apart', () => {
    const columns = toColumns([point(0, 800), point(1000, 800), point(1000, 60)], [], 'Cel');
    expect(columns.at).toEqual([0, 1000, 1001]);
    expect(columns.plan).toEqual([800, 800, 60]);
  });
});

describe('the range of values to show', () => {
  const columns = toColumns([point(0, 20), point(100_000, 800)], [curve()], 'Cel');

  it('holds everything in the window, with room and with headroom for marks', () => {
    const range = valueRange(columns, { from: 0, to: 100_000 });
    expect(range.low).toBeLessThan(10);
    expect(range.high).toBeGreaterThan(810);
    const roomy = valueRange(columns, { from: 0, to: 100_000 }, 0.25);
    expect((roomy.high - range.high) / (roomy.high - roomy.low)).toBeCloseTo(0.25, 9);
  });

  it('looks at the points beside a narrow window, where a long straight line has none inside', () => {
    const range = valueRange(columns, { from: 50_000, to: 60_000 });
    expect(range.high).toBeGreaterThan(800);
  });

  it('has an answer for an empty chart', () => {
    expect(valueRange(toColumns([], [], 'Cel'), { from: 0, to: 1 })).toEqual({ low: 0, high: 100 });
  });
});

describe('the value under the cursor', () => {
  const columns = toColumns([], [curve({ gaps: [{ from: 1000, to: 5000 }] })], 'Cel');
  const cells = columns.curves[0] ?? [];
  const at = (instant: number) => valueAt(columns, cells, instant, 100);

  it('is the nearer of two readings that a line joins', () => {
    expect(at(200)).toBe(20);
    expect(at(800)).toBe(30);
  });

  it('is nothing inside a gap, before the first and after the last reading', () => {
    expect(at(2000)).toBeNull();
    expect(at(4000)).toBeNull();
    expect(at(5101)).toBeNull();
    expect(at(-101)).toBeNull();
  });

  it('is the last reading right at its edge', () => {
    expect(at(1050)).toBe(30);
    expect(at(4950)).toBe(70);
    expect(at(5050)).toBe(70);
  });
});
