import { describe, expect, it } from 'vitest';
import type { Segment, SoakSegment } from '../../hub/contract/schedule.ts';
import { mainSoak, measured, toleranceOf } from '../../hub/review/measure.ts';

const soak = (targetCelsius: number): SoakSegment => ({
  ...{ kind: 'soak', targetCelsius, toleranceCelsius: 8, durationSeconds: 600 },
});
const ramp: Segment = { kind: 'ramp', targetCelsius: 800, toleranceCelsius: 10, rateCelsiusPerHour: null };

describe('the soak that a schedule is about', () => {
  it('is the hottest, and of those the last', () => {
    expect(mainSoak([soak(650), ramp, soak(800), soak(200)])?.index).toBe(2);
    expect(mainSoak([soak(800), ramp, soak(800)])?.index).toBe(2);
    expect(mainSoak([ramp])).toBeNull();
  });
});

describe('a measure of a soak', () => {
  const figures = { state: 'done' as const, meanCelsius: 801, peakCelsius: 806, soakSeconds: 640 };

  it('is the number that its name says', () => {
    expect(measured('soak-mean', figures)).toBe(801);
    expect(measured('peak', figures)).toBe(806);
    expect(measured('soak-time', figures)).toBe(640);
  });

  it('is not told of a soak that was skipped or is not over', () => {
    expect(measured('soak-time', { ...figures, state: 'skipped' })).toBeNull();
    expect(measured('peak', { ...figures, state: 'running' })).toBeNull();
  });

  it('has the tolerance that the schedule gives it: a band, a ceiling, a least time, or none', () => {
    expect(toleranceOf('soak-mean', soak(800))).toEqual({ lower: 792, upper: 808 });
    expect(toleranceOf('peak', soak(800))).toEqual({ lower: null, upper: 808 });
    expect(toleranceOf('soak-time', soak(800))).toEqual({ lower: 600, upper: null });
    expect(toleranceOf('hardness', soak(800))).toBeNull();
    expect(toleranceOf('peak', null)).toBeNull();
  });
});
