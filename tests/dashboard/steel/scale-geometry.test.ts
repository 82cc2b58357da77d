import { describe, expect, it } from 'vitest';
import { rulerTicks } from '../../../dashboard/steel/ruler.ts';
import {
  lanesOf,
  type Stretch,
  scaleEnds,
  shareOf,
  spreadLabels,
  yOf,
} from '../../../dashboard/steel/scale-geometry.ts';

const stretch: Stretch = {
  topPx: 40,
  heightPx: 1000,
  lowCelsius: 0,
  highCelsius: 1300,
  closeLowCelsius: 600,
  closeHighCelsius: 900,
};

describe('the scale of heat', () => {
  it('reaches a hundred above everything drawn and takes in all that is busy', () => {
    const ends = scaleEnds(
      [1195, 890],
      [
        { low: 630, high: 720 },
        { low: 850, high: 890 },
      ],
    );
    expect(ends).toEqual({ lowCelsius: 0, highCelsius: 1300, closeLowCelsius: 600, closeHighCelsius: 900 });
  });

  it('holds its ends when nothing is known of a steel', () => {
    const ends = scaleEnds([], []);
    expect(ends.highCelsius).toBeGreaterThan(ends.closeHighCelsius);
    expect(ends.closeHighCelsius).toBeGreaterThan(ends.closeLowCelsius);
    expect(ends.closeLowCelsius).toBeGreaterThan(ends.lowCelsius);
  });

  it('puts the foot at the bottom and the top at the top, and nothing outside', () => {
    expect(yOf(0, stretch)).toBeCloseTo(1040, 9);
    expect(yOf(1300, stretch)).toBeCloseTo(40, 9);
    expect(yOf(-210, stretch)).toBeCloseTo(1040, 9);
    expect(yOf(2000, stretch)).toBeCloseTo(40, 9);
  });

  it('only ever rises, joins its pieces without a jump and draws the busy part larger', () => {
    for (let celsius = 0; celsius < 1300; celsius += 1) {
      expect(shareOf(celsius + 1, stretch)).toBeGreaterThan(shareOf(celsius, stretch));
    }
    expect(shareOf(600.001, stretch) - shareOf(599.999, stretch)).toBeLessThan(1e-5);
    const [near, far] = [
      shareOf(701, stretch) - shareOf(700, stretch),
      shareOf(301, stretch) - shareOf(300, stretch),
    ];
    expect(near).toBeGreaterThan(2 * far);
  });

  it('draws equal steps equally below and above the busy part', () => {
    const step = (from: number) => shareOf(from + 100, stretch) - shareOf(from, stretch);
    expect(step(100)).toBeCloseTo(step(400), 12);
    expect(step(100)).toBeCloseTo(step(1100), 12);
  });
});

describe('the numbers along the rod', () => {
  it.each([
    ['°C', (celsius: number) => celsius, (shown: number) => shown],
    ['°F', (celsius: number) => celsius * 1.8 + 32, (shown: number) => (shown - 32) / 1.8],
  ] as const)('rise and never touch, in %s', (_label, show, back) => {
    for (const high of [1000, 1100, 1200, 1300]) {
      const of = { ...stretch, highCelsius: high };
      const heights = rulerTicks(of, show).map((value) => yOf(back(value), of));
      expect(heights.length).toBeGreaterThan(10);
      for (const [index, y] of heights.slice(1).entries())
        expect((heights[index] ?? 0) - y).toBeGreaterThan(18);
    }
  });
});

describe('lanes', () => {
  it('share a lane where they do not touch, and part where they do', () => {
    const spans = [
      { low: 130, high: 240 },
      { low: 630, high: 720 },
      { low: 699, high: 745 },
    ];
    expect(lanesOf(spans, 10)).toEqual([0, 0, 1]);
  });

  it('keep the gap asked for', () => {
    const spans = [
      { low: 0, high: 10 },
      { low: 15, high: 20 },
    ];
    expect(lanesOf(spans, 4)).toEqual([0, 0]);
    expect(lanesOf(spans, 6)).toEqual([0, 1]);
  });
});

describe('labels', () => {
  const room = { from: 0, to: 500 };

  it('stay where they want to be when there is room', () => {
    expect(spreadLabels([10, 100, 50], 20, room)).toEqual([10, 100, 50]);
  });

  it('part evenly about the place that they all want', () => {
    expect(spreadLabels([100, 100, 100], 20, room)).toEqual([80, 100, 120]);
  });

  it('keep their distance, their order and the edges, however crowded', () => {
    const placed = spreadLabels([2, 490, 495, 500, 1, 3], 25, room);
    const sorted = [...placed].sort((a, b) => a - b);
    for (const [index, y] of sorted.slice(1).entries())
      expect(y - (sorted[index] ?? 0)).toBeGreaterThanOrEqual(25 - 1e-9);
    expect(sorted[0]).toBeGreaterThanOrEqual(0);
    expect(sorted.at(-1)).toBeLessThanOrEqual(500);
    expect(placed[4]).toBeLessThan(placed[0] ?? 0);
  });
});
