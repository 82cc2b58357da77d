import { describe, expect, it } from 'vitest';
import { envelopeOf, quantile } from '../../hub/review/envelope.ts';

describe('a quantile', () => {
  // Hyndman & Fan 1996, definition 7: the point 1 + (n - 1) p of the ordered sample. By hand: of 1 to 10, one quarter
  // stands at 3.25 and three quarters at 7.75.
  it('lies between order statistics as definition 7 of Hyndman and Fan says', () => {
    const ten = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    expect([0, 0.25, 0.5, 0.75, 1].map((share) => quantile(ten, share))).toEqual([1, 3.25, 5.5, 7.75, 10]);
    expect(quantile([7], 0.25)).toBe(7);
  });
});

describe('the envelope of a set of firings', () => {
  const curves = [
    [800, 810, null],
    [804, null, null],
    [808, 812, null],
    [816, 815, 820],
    [812, 818, null],
  ];

  it('tells lowest, quartiles, median and highest at each instant', () => {
    const { size, lowest, lowerQuartile, median, upperQuartile, highest } = envelopeOf(curves);
    expect(size).toBe(5);
    expect([lowest, lowerQuartile, median, upperQuartile, highest].map(([first]) => first)).toEqual([
      800, 804, 808, 812, 816,
    ]);
  });

  it('says of how many it speaks, and has no quartiles of three', () => {
    const { count, median, lowerQuartile } = envelopeOf(curves);
    expect(count).toEqual([5, 4, 1]);
    expect(median[2]).toBe(820);
    expect(lowerQuartile[2]).toBeNull();
    expect(envelopeOf(curves.slice(0, 3)).lowerQuartile).toEqual([null, null, null]);
  });

  it('of nothing is nothing', () => {
    expect(envelopeOf([])).toMatchObject({ size: 0, count: [], median: [] });
  });
});
