import { describe, expect, it } from 'vitest';
import { differenceOver, driftsOf, figuresLess } from '../../hub/review/difference.ts';

const NONE = { soakMeanCelsius: null, peakCelsius: null, soakSeconds: null, rateCelsiusPerHour: null };

describe('the difference of two curves', () => {
  it('is its mean with its sign, and the largest either way', () => {
    expect(differenceOver([800, 806, 799], [800, 800, 802], 0, 2)).toEqual({
      meanCelsius: 1,
      largestCelsius: 6,
      points: 3,
    });
    expect(differenceOver([790, 804], [800, 800], 0, 1)?.largestCelsius).toBe(-10);
  });

  it('counts only where both are known, inside the segment', () => {
    expect(differenceOver([1, null, 5, 9], [0, 0, null, 0], 0, 2)).toEqual({
      meanCelsius: 1,
      largestCelsius: 1,
      points: 1,
    });
    expect(differenceOver([null], [800], 0, 0)).toBeNull();
  });
});

describe('figures against those of a reference', () => {
  it('are differences, and unknown where one side is', () => {
    const own = { ...NONE, peakCelsius: 812, soakSeconds: 600 };
    expect(figuresLess(own, { ...NONE, peakCelsius: 808 })).toEqual({ ...NONE, peakCelsius: 4 });
    expect(figuresLess(own, undefined)).toEqual(NONE);
  });
});

describe('drift over firings', () => {
  const peaks = (values: (number | null)[]) => values.map((peakCelsius) => ({ ...NONE, peakCelsius }));

  it('is sure when the figure climbs firing by firing', () => {
    const [found] = driftsOf(1, peaks([800, 802.1, 803.9, 806, 808.1]));
    // The least-squares slope of these by hand: (-2·800 - 802.1 + 806 + 2·808.1) / 10 = 2.01.
    expect(found?.perFiring).toBeCloseTo(2.01, 9);
    expect(found).toMatchObject({ segment: 1, figure: 'peakCelsius', firings: 5, sure: true });
  });

  it('is not sure when it only scatters, and is not told of two firings', () => {
    expect(driftsOf(1, peaks([800, 806, 799, 805, 801]))[0]?.sure).toBe(false);
    expect(driftsOf(1, peaks([800, null, 806]))).toEqual([]);
  });
});
