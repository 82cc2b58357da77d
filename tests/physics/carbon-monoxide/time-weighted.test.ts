import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dailyShiftFactor,
  shiftFactor,
  weeklyShiftFactor,
} from '../../../hub/physics/carbon-monoxide/extended-shift.ts';
import { limitProfile } from '../../../hub/physics/carbon-monoxide/limits.ts';
import {
  instrumentReading,
  mixtureShare,
  timeWeightedPpm,
} from '../../../hub/physics/carbon-monoxide/time-weighted.ts';

const OSHA = limitProfile('osha').convention;
const NIOSH = limitProfile('niosh').convention;

describe('means by convention', () => {
  test('OSHA: 150 ppm 2 h, 75 ppm 2 h, 50 ppm 4 h make 81.25 ppm', () => {
    // SOURCE: 29 CFR 1910.1000(d)(1), worked example.
    const parts = [
      { ppm: 150, hours: 2 },
      { ppm: 75, hours: 2 },
      { ppm: 50, hours: 4 },
    ];
    expect(timeWeightedPpm(OSHA, parts)).toBe(81.25);
    expect(timeWeightedPpm(NIOSH, parts)).toBe(81.25);
  });

  test('OSHA always divides by 8, NIOSH by the day up to 10 h', () => {
    expect(timeWeightedPpm(OSHA, [{ ppm: 20, hours: 2 }])).toBe(5);
    expect(timeWeightedPpm(OSHA, [{ ppm: 20, hours: 12 }])).toBe(30);
    expect(timeWeightedPpm(NIOSH, [{ ppm: 20, hours: 10 }])).toBe(20);
    expect(timeWeightedPpm(NIOSH, [{ ppm: 20, hours: 12 }])).toBe(24);
  });

  test('a mixture of 500 of 1000, 45 of 200 and 40 of 200 is 0.925 of what is allowed', () => {
    // SOURCE: 29 CFR 1910.1000(d)(2), worked example.
    const parts = [
      { level: 500, limit: 1000 },
      { level: 45, limit: 200 },
      { level: 40, limit: 200 },
    ];
    expect(mixtureShare(parts)).toBeCloseTo(0.925, 12);
    expect(() => mixtureShare([{ level: 1, limit: 0 }])).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });

  test('an empty day and impossible parts are refused', () => {
    expect(() => timeWeightedPpm(OSHA, [])).toThrowError(expect.objectContaining({ code: 'bad-input' }));
    expect(() => timeWeightedPpm(OSHA, [{ ppm: 1, hours: 25 }])).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('a worn instrument', () => {
  test('shows 5 ppm after 2 h at 20 ppm, and does not fall when it is switched off', () => {
    // SOURCE: gas-monitor technical note.
    const worn = Array.from({ length: 120 }, () => 20);
    expect(instrumentReading(worn).twaPpm).toBe(5);
    expect(instrumentReading([...worn, ...Array.from({ length: 200 }, () => 0)]).twaPpm).toBe(5);
  });

  test('passes the peak after a long day, and keeps the highest 15 minutes', () => {
    expect(instrumentReading(Array.from({ length: 720 }, () => 20)).twaPpm).toBe(30);
    const burst = Array.from({ length: 60 }, (_, i) => (i >= 20 && i < 25 ? 300 : 20));
    expect(instrumentReading(burst).highestStelPpm).toBeCloseTo(113.333, 3);
    expect(instrumentReading(burst).stelPpm).toBeCloseTo(20, 9);
  });
});

describe('longer days and weeks', () => {
  // SOURCE: Brief and Scala formulas, published in a digest of BC regulation 5.50; factors computed.
  test.each([
    [9, 0.833],
    [10, 0.7],
    [12, 0.5],
    [16, 0.25],
  ])('%d h a day', (hours, factor) => {
    expect(dailyShiftFactor(hours)).toBeCloseTo(factor, 3);
  });

  test.each([
    [48, 0.781],
    [56, 0.625],
    [60, 0.5625],
    [72, 0.417],
  ])('%d h a week', (hours, factor) => {
    expect(weeklyShiftFactor(hours)).toBeCloseTo(factor, 3);
  });

  test('25 ppm on a 12 h shift become 12.5 ppm, and the smaller factor governs', () => {
    expect(25 * shiftFactor(12)).toBeCloseTo(12.5, 9);
    expect(shiftFactor(9, 72)).toBeCloseTo(0.417, 3);
  });

  test('a short day never raises a limit, and a longer one never raises it either', () => {
    const hours = fc.double({ min: 0.01, max: 23, noNaN: true });
    fc.assert(
      fc.property(hours, fc.double({ min: 0, max: 1, noNaN: true }), (day, more) => {
        expect(shiftFactor(day)).toBeLessThanOrEqual(1);
        expect(shiftFactor(day + more)).toBeLessThanOrEqual(shiftFactor(day));
      }),
    );
  });
});
