import { describe, expect, it } from 'vitest';
import { drawnToMm, readThickness, rowOf } from '../../../dashboard/steel/quench-rows.ts';
import { known, unknown } from './answers.ts';

const row = (medium: 'still-oil' | 'still-water', mm: number | null) => ({
  medium,
  severityPerInch: { low: 0.25, high: 0.3 },
  criticalMm: mm === null ? unknown('no factor', 'mm') : known(mm, mm - 5, mm + 8, 'mm'),
  hardensThrough: 'no' as const,
});

describe('the section that is quenched', () => {
  it('is read in mm, with a decimal comma too', () => {
    expect(readThickness('6,5')).toEqual({ mm: 6.5 });
  });

  it('is asked for when it is missing or no number', () => {
    expect(readThickness('')).toHaveProperty('fault');
    expect(readThickness('thick')).toHaveProperty('fault');
  });

  it('is drawn with every band that is known, and fits also when none is', () => {
    expect(drawnToMm([row('still-oil', 40), row('still-water', 90)], 25)).toBeGreaterThan(98);
    expect(drawnToMm([row('still-oil', null)], 25)).toBeGreaterThan(25);
  });

  it('finds the row of its medium', () => {
    const answer = {
      steel: { id: null, title: '', composition: {}, flags: [] },
      idealDiameterMm: known(50, 40, 60, 'mm'),
      factors: {},
      media: [row('still-oil', 40)],
    };
    expect(rowOf(answer, 'still-oil')?.medium).toBe('still-oil');
    expect(rowOf(answer, 'still-water')).toBeUndefined();
  });
});
