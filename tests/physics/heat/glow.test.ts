import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { glowAt, glowScale } from '../../../hub/physics/heat/glow.ts';

/** Chapman, Workshop Technology part 1 (5th ed. 1972), ranges as printed. */
const CHAPMAN: readonly (readonly [name: string, low: number, high: number])[] = [
  ['black red', 426, 593],
  ['very dark red', 594, 704],
  ['dark red', 705, 814],
  ['cherry red', 815, 870],
  ['light cherry', 871, 981],
  ['orange', 982, 1092],
  ['yellow', 1093, 1258],
  ['yellow-white', 1259, 1314],
];

describe('colour at heat', () => {
  it.each(CHAPMAN)('%s reaches from %d to %d °C', (name, low, high) => {
    expect(glowAt(low).name).toBe(name);
    expect(glowAt(high).name).toBe(name);
    expect(glowAt(low - 1).name).not.toBe(name);
  });

  it('always says that an eye is worth 60 °C either way', () => {
    expect(glowScale().every((glow) => glow.uncertaintyCelsius === 60)).toBe(true);
  });

  it('does not glow cold, and never grows darker with heat', () => {
    expect(glowAt(20).name).toBe('no glow');
    const light = (celsius: number): number => glowAt(celsius).rgb.reduce((sum, part) => sum + part, 0);
    fc.assert(
      fc.property(fc.integer({ min: 430, max: 1600 }), fc.integer({ min: 430, max: 1600 }), (a, b) => {
        expect(light(Math.max(a, b))).toBeGreaterThanOrEqual(light(Math.min(a, b)));
      }),
      { seed: 3 },
    );
  });

  it('leaves no gap between names and refuses what is no temperature of steel', () => {
    const scale = glowScale();
    expect(scale.every((glow, i) => i === 0 || glow.lowCelsius === scale[i - 1]?.highCelsius)).toBe(true);
    expect(() => glowAt(1700)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
    expect(() => glowAt(Number.NaN)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });
});
