import { describe, expect, it } from 'vitest';
import { comparePicture, compareReadout, mainSegment } from '../../../dashboard/review/compare-picture.ts';
import { compareRows, driftWords, signedCelsius } from '../../../dashboard/review/compare-rows.ts';
import { comparison } from './fixtures.ts';

const [ramp, soak] = comparison.segments;
if (!(ramp && soak)) throw new Error('the fixture has two segments');

describe('the overlay of firings', () => {
  it('draws the envelope first and the reference last, on top and strongest', () => {
    const { lines, fills } = comparePicture(comparison, 'Cel', null);
    expect(lines.map(({ look }) => look)).toEqual(['edge', 'edge', 'furnace', 'other', 'surface']);
    expect(fills).toEqual([[0, 1]]);
    expect(lines.at(-1)?.y).toEqual([20, 420, 800, null, 800, 802, 801]);
  });

  it('shows one segment close, with the values of that segment alone', () => {
    const { xScale, yScale, marks } = comparePicture(comparison, 'Cel', soak);
    expect(xScale.from).toBeGreaterThan(100);
    expect(yScale.from).toBeGreaterThan(790);
    expect(yScale.to).toBeLessThan(820);
    expect(marks).toEqual([]);
  });

  it('counts time from the start of each segment, not of the axis', () => {
    const { tick, ticks } = comparePicture(comparison, 'Cel', soak);
    expect(ticks?.map(tick)).toEqual(['0 s', '50 s', '2 min', '3 min', '3 min']);
    expect(comparePicture({ ...comparison, by: 'share' }, 'Cel', ramp).tick(0)).toBe('0 %');
  });

  it('is shown in the user’s degrees', () => {
    const { lines } = comparePicture(comparison, '[degF]', null);
    expect(lines.at(-1)?.y[0]).toBeCloseTo(68, 9);
  });

  it('reads out place, reference, median and spread, and of how many', () => {
    expect(compareReadout(comparison, 'Cel', 5)).toBe(
      'Soak at 800 °C, 2 min · reference 802 °C · median 806 °C of 2 · 802 °C to 810 °C',
    );
    expect(compareReadout(comparison, 'Cel', 3)).toBe('');
  });

  it('is about the hottest soak when nobody chooses', () => {
    expect(mainSegment(comparison.segments)?.index).toBe(1);
    expect(mainSegment([ramp])?.index).toBe(0);
    expect(mainSegment([])).toBeNull();
  });
});

describe('the table of differences', () => {
  it('says each figure with how much it differs from the reference', () => {
    const [other, good] = compareRows(comparison, 1, 'Cel');
    expect(other).toMatchObject({
      ...{ peak: '810 °C (+4.0 °C)', soakTime: '11 min (−2 min)', toReference: '+2.0 °C (−5.0 °C)' },
      rate: '–',
    });
    expect(good).toMatchObject({ peak: '806 °C', toReference: 'reference' });
  });

  it('has no figures of a segment that a firing never had', () => {
    expect(compareRows(comparison, 0, 'Cel')[0]).toMatchObject({ peak: '–', toPlan: '–', toReference: '–' });
  });

  it('turns a difference into the size of a difference, not into a temperature', () => {
    expect(signedCelsius(10, '[degF]')).toBe('+18.0 °F');
    expect(signedCelsius(-0.01, 'Cel')).toBe('0.0 °C');
  });

  it('tells a drift only when chance does not explain it', () => {
    expect(driftWords(comparison.drifts, 1, 'Cel')).toEqual([
      'The peak changes by +2.0 °C from one firing to the next (+1.5 °C to +2.5 °C, 95 %), over 4 firings.',
    ]);
    expect(driftWords(comparison.drifts, 0, 'Cel')).toEqual([]);
  });
});
