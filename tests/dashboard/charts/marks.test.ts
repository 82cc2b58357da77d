import { describe, expect, it } from 'vitest';
import { type MarkRoom, marksNear, placeMarks } from '../../../dashboard/charts/marks.ts';
import type { ChartMark } from '../../../dashboard/charts/types.ts';

const mark = (at: number, shape: ChartMark['shape'] = 'event', words = 'word'): ChartMark => ({
  at,
  shape,
  words,
});
const room = (change: Partial<MarkRoom> = {}): MarkRoom => ({
  left: 0,
  right: 1000,
  rows: 1,
  shapeWidth: 20,
  xOf: (at) => at,
  widthOf: (words) => words.length * 20,
  ...change,
});

describe('marks over a chart', () => {
  it('carry their words at the right, and at the left where the chart ends', () => {
    const placed = placeMarks([mark(100), mark(950)], room());
    expect(placed.map(({ words }) => words)).toEqual(['right', 'left']);
  });

  it('lets the event lose its words, never the danger beside it', () => {
    const placed = placeMarks([mark(500, 'event'), mark(510, 'danger')], room({ left: 480, right: 640 }));
    expect(placed.map(({ mark: { shape }, words }) => [shape, words])).toEqual([
      ['event', null],
      ['danger', 'right'],
    ]);
  });

  it('takes another row before it drops words', () => {
    const placed = placeMarks([mark(500), mark(510), mark(520)], room({ rows: 3 }));
    expect(placed.every(({ words }) => words !== null)).toBe(true);
    expect(new Set(placed.map(({ row }) => row)).size).toBeGreaterThan(1);
  });

  it('never lays words over words', () => {
    const marks = Array.from({ length: 40 }, (_, index) => mark(index * 23, 'warning', 'some words'));
    const placed = placeMarks(marks, room({ rows: 2 }));
    const spans = placed.flatMap(({ x, row, words }) => {
      if (words === null) return [];
      return [words === 'right' ? { row, from: x, to: x + 220 } : { row, from: x - 220, to: x }];
    });
    for (const [index, one] of spans.entries()) {
      const others = spans.filter((other, at) => at !== index && other.row === one.row);
      expect(others.some((other) => other.from < one.to && other.to > one.from)).toBe(false);
    }
    expect(placed).toHaveLength(40);
  });

  it('leaves out what is outside the window', () => {
    const placed = placeMarks([mark(-5), mark(1005), mark(0)], room());
    expect(placed.map(({ x, words }) => [x, words])).toEqual([[0, 'right']]);
  });

  it('are found near the cursor, nearest first', () => {
    expect(marksNear([mark(10), mark(100), mark(90)], 97, 20).map(({ at }) => at)).toEqual([100, 90]);
  });
});
