import { describe, expect, it } from 'vitest';
import {
  aboutDifference,
  aboutTime,
  coolingRate,
  timeBand,
  twoFigures,
} from '../../../dashboard/heat/about.ts';

describe('times and rates with the figures that they deserve', () => {
  it('tells a time the coarser the less is known of it', () => {
    expect(aboutTime(900.1, 760, 1180)).toBe('15 min');
    expect(aboutTime(5120, 4080, 6420)).toBe('1 h 25 min');
    expect(aboutTime(127, 100, 250)).toBe('2 min');
    expect(aboutTime(11.5, 8.2, 12.6)).toBe('12 s');
  });

  it('never claims better than a tenth, though both ends agree', () => {
    expect(aboutTime(7443)).toBe('2 h 5 min');
  });

  it('tells both ends of a band, and nothing where they come out the same', () => {
    expect(timeBand(691, 1180)).toBe('12 to 20 min');
    expect(timeBand(8.2, 12.6)).toBe('8 to 13 s');
    expect(timeBand(7400, 7470)).toBeNull();
  });

  it('counts a rate by the hour, the minute or the second, whichever one would', () => {
    expect(coolingRate(28, 'Cel')).toBe('28 °C/h');
    expect(coolingRate(6496, 'Cel')).toBe('110 °C/min');
    expect(coolingRate(189_713, 'Cel')).toBe('53 °C/s');
    // NIST SP 811 B.8: a difference of 1 °C is one of 1.8 °F.
    expect(coolingRate(28, '[degF]')).toBe('50 °F/h');
  });

  it('gives two figures and no more', () => {
    expect(twoFigures(1475.17)).toBe('1500');
    expect(twoFigures(Math.PI)).toBe('3.1');
    expect(aboutDifference(0.57, 'Cel')).toBe('less than 1 °C');
    expect(aboutDifference(-21.6, 'Cel')).toBe('22 °C');
  });
});
