import { expect, describe as group, it } from 'vitest';
import { describe, meanOf, sum } from '../../../hub/physics/statistics/describe.ts';
import { digits, UNIVARIATE } from '../../reference/strd.ts';

/**
 * Digits of the standard deviation and of the lag-1 autocorrelation that have to agree. NumAcc3 and NumAcc4 have no
 * more in double precision: 1000000.1 is itself rounded after 10 digits of the spread.
 */
const WANTED: Readonly<Record<string, readonly [number, number]>> = {
  Lew: [14, 14],
  Lottery: [14, 14],
  Mavro: [12.5, 12.5],
  Michelso: [13, 13],
  NumAcc1: [15, 15],
  NumAcc2: [14, 13],
  NumAcc3: [9, 10],
  NumAcc4: [8, 8.5],
  PiDigits: [14, 11],
};

group('mean, standard deviation and lag-1 autocorrelation', () => {
  it.each(UNIVARIATE)('keep the certified digits of $name (NIST SRD 140)', ({ name, data, certified }) => {
    const found = describe(data);
    const [deviation = 16, lagOne = 16] = WANTED[name] ?? [];
    expect(digits(found.mean, certified.mean)).toBeGreaterThanOrEqual(15);
    expect(digits(found.standardDeviation, certified.deviation)).toBeGreaterThanOrEqual(deviation);
    expect(digits(found.lagOneAutocorrelation ?? 0, certified.lagOne)).toBeGreaterThanOrEqual(lagOne);
  });

  it('cover every univariate set of the file', () => {
    expect(new Set(UNIVARIATE.map((set) => set.name))).toEqual(new Set(Object.keys(WANTED)));
    expect(UNIVARIATE.map((set) => set.data.length)).toEqual([200, 218, 50, 100, 3, 1001, 1001, 1001, 5000]);
  });

  it('tell the digits of pi as distributed from the true ones', () => {
    // The file's note: with the true digits the mean is 4.5358.
    const distributed = UNIVARIATE.find((set) => set.name === 'PiDigits');
    const changed = distributed?.data.map((digit, i) => (i === 956 ? 8 : digit)) ?? [];
    expect(meanOf(changed)).toBe(4.5358);
    expect(distributed?.data.slice(0, 6)).toEqual([3, 1, 4, 1, 5, 9]);
  });
});

group('odd rows', () => {
  it('know no spread of a single value, and no autocorrelation of equal ones', () => {
    expect(describe([7])).toEqual({ count: 1, mean: 7, standardDeviation: 0, lagOneAutocorrelation: null });
    expect(describe([0.1, 0.1, 0.1]).standardDeviation).toBe(0);
    expect(describe([0.1, 0.1, 0.1]).lagOneAutocorrelation).toBeNull();
  });

  it('are refused when empty or not finite, naming the value', () => {
    expect(() => describe([])).toThrow(expect.objectContaining({ code: 'bad-input' }));
    expect(() => describe([1, Number.NaN])).toThrow(/Value 1/);
    expect(() => describe([1, Number.POSITIVE_INFINITY])).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });

  it('lose nothing small beside something large', () => {
    expect(sum([1e16, 1, -1e16])).toBe(1);
    expect(sum([1, 1e100, 1, -1e100])).toBe(2);
  });
});
