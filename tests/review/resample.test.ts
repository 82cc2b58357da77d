import { describe, expect, it } from 'vitest';
import { coldest, resample } from '../../hub/review/resample.ts';

const good = (at: number, value: number) => ({ at, value, quality: 'good' as const });

describe('a curve at instants of another', () => {
  const readings = [good(0, 100), good(10, 200), good(30, 100)];

  it('runs straight between readings and meets each of them', () => {
    expect(resample({ readings, gaps: [] }, [0, 5, 10, 20, 30])).toEqual([100, 150, 200, 150, 100]);
  });

  it('is not carried on beyond its ends, and is not known where no instant is', () => {
    expect(resample({ readings, gaps: [] }, [-1, null, 31])).toEqual([null, null, null]);
  });

  it('is never joined over a gap: what stands at its edges is still there', () => {
    const curve = { readings, gaps: [{ from: 10, to: 30 }] };
    expect(resample(curve, [5, 10, 11, 29, 30])).toEqual([150, 200, null, null, 100]);
  });

  it('goes by good readings alone', () => {
    const doubtful = { at: 5, value: 900, quality: 'bad' as const };
    expect(resample({ readings: [good(0, 100), doubtful, good(10, 200)], gaps: [] }, [5])).toEqual([150]);
  });
});

describe('the coldest of several curves', () => {
  it('is the lowest at each instant', () => {
    expect(
      coldest([
        [1, 5],
        [2, 4],
        [3, 6],
      ]),
    ).toEqual([1, 4]);
  });

  it('is not known while one of them is not: nobody knows which was coldest', () => {
    expect(
      coldest([
        [1, null],
        [null, 4],
      ]),
    ).toEqual([null, null]);
    expect(coldest([])).toEqual([]);
  });
});
