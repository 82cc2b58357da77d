import { describe, expect, test } from 'vitest';
import { exposureReport } from '../../../hub/physics/carbon-monoxide/exposure-report.ts';
import { at, minutes, readings, START } from './exposure-curves.ts';

describe('the report of a whole curve', () => {
  test('is the stepper run to the end, strictest limits when none are asked for', () => {
    const samples = readings(0, 120, () => 70, 30);
    const report = exposureReport({ samples, endMs: START + minutes(123) });
    expect(report.profile.id).toBe('strictest');
    expect(report.twa.ppm).toBeCloseTo((70 * 123) / 480, 9);
    expect(report.doseWarnings.map((warning) => warning.atMs !== null)).toEqual([true, true, true]);
    expect(report.limits.find((limit) => limit.kind === 'stel')?.standing).toBe('above');
  });

  test('takes the shop’s own limits', () => {
    const samples = readings(0, 30, () => 12);
    const report = exposureReport({ profile: { ceilingPpm: 10, source: 'the keeper' }, samples });
    expect(report.limits).toHaveLength(1);
    expect(report.limits[0]).toMatchObject({ kind: 'ceiling', standing: 'above' });
  });

  test('refuses no samples, an end before the last and more than a week', () => {
    const badInput = expect.objectContaining({ code: 'bad-input' });
    expect(() => exposureReport({ samples: [] })).toThrowError(badInput);
    expect(() => exposureReport({ samples: [at(0, 1), at(9, 1)], endMs: START + 1 })).toThrowError(badInput);
    expect(() => exposureReport({ samples: [at(0, 1), at(8 * 1440, 1)] })).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});
