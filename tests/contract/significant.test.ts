import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  roundToUncertainty,
  showBand,
  showPlusMinus,
  showTo,
  showValue,
  significantStep,
} from '../../hub/contract/significant.ts';

const uncertainty = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('figures that fit the uncertainty', () => {
  // Particle Data Group, Review of Particle Physics, introduction, "Rounding" (from memory): its two
  // examples, and its rule for 950 to 999.
  it.each([
    [0.827, 0.119, '0.83', '0.12'],
    [0.827, 0.367, '0.8', '0.4'],
    [14.674, 0.964, '14.7', '1.0'],
  ])('%d ± %d is written %s ± %s', (given, by, shown, shownBy) => {
    expect(showPlusMinus(given, by, '')).toBe(`${shown} ± ${shownBy}`);
  });

  it('does not write 861.4273 °C for what is known to 25, and not even 861 for what is known to 45', () => {
    expect(showValue(861.4273, 25, '°C')).toBe('861 °C');
    expect(showValue(861.4273, 45, '°C')).toBe('860 °C');
    expect(showValue(861.4273, 400, '°C')).toBe('900 °C');
  });

  it('writes a band to the place that half its width allows', () => {
    expect(showBand({ low: 713.3, value: 762.5, high: 795.9 }, '°C')).toBe('760 °C (710 to 800)');
    expect(showBand({ low: -8.2, value: 12.4, high: 33 }, '°C')).toBe('12 °C (-8 to 33)');
    expect(showBand({ low: 0.12, value: 0.25, high: 0.5 }, 'mm')).toBe('0.25 mm (0.12 to 0.50)');
  });

  it('rounds no further than it knows: without an uncertainty the value stands as it is', () => {
    expect(significantStep(0)).toBe(0);
    expect(significantStep(Number.NaN)).toBe(0);
    expect(roundToUncertainty(1.25, Number.POSITIVE_INFINITY)).toBe(1.25);
    expect(showBand({ low: 0, value: 0, high: 0 }, 'mm')).toBe('0 mm');
  });

  it('keeps to the place that a table prints', () => {
    expect(showTo(41.27560645, -3, 'mV')).toBe('41.276 mV');
    expect(showTo(52_454, 3, '°C/h')).toBe('52000 °C/h');
    expect(showTo(-0.0001, -3, 'mV')).toBe('0.000 mV');
  });

  it('never moves a value by more than half a step, and the step by no more than the uncertainty', () => {
    fc.assert(
      fc.property(value, uncertainty, (given, by) => {
        const step = significantStep(by);
        expect(step).toBeLessThanOrEqual(by);
        expect(step).toBeGreaterThan(by / 100);
        expect(Math.abs(roundToUncertainty(given, by) - given)).toBeLessThanOrEqual(step * 0.5000001);
      }),
    );
  });

  it('is at rest: what has been rounded is not rounded again', () => {
    fc.assert(
      fc.property(value, uncertainty, (given, by) => {
        const once = roundToUncertainty(given, by);
        expect(roundToUncertainty(once, by)).toBe(once);
      }),
    );
  });
});
