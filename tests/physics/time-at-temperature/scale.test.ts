import { describe, expect, it } from 'vitest';
import { heldAt } from '../../../hub/physics/time-at-temperature/curve.ts';
import { scaleGrown } from '../../../hub/physics/time-at-temperature/scale.ts';
import { SCALE } from '../../reference/diffusion-values.ts';

describe('scale in air', () => {
  it.each(SCALE)(
    'an hour at %d °C lies between the two published laws',
    (celsius, fromKp, gain, fromKw, metal) => {
      const result = scaleGrown(heldAt(celsius, 3600));
      const millimetres = result.thicknessMetres.value * 1000;
      // The value is the geometric mean of the two laws; the band is half of the lesser to twice the greater.
      expect(millimetres / Math.sqrt(fromKp * fromKw)).toBeCloseTo(1, 2);
      expect((result.thicknessMetres.low * 2000) / Math.min(fromKp, fromKw)).toBeCloseTo(1, 2);
      expect((result.thicknessMetres.high * 500) / Math.max(fromKp, fromKw)).toBeCloseTo(1, 2);
      expect(result.gainKgM2.low * 100).toBeLessThan(gain);
      expect(result.gainKgM2.high * 100).toBeGreaterThan(gain);
      expect(result.metalLossMetres.low * 1000).toBeLessThan(metal);
      expect(result.metalLossMetres.high * 1000).toBeGreaterThan(metal);
    },
  );

  it('metal loss goes with oxygen gain as the table has it: 15.9 mg/cm² cost 0.071 mm', () => {
    const result = scaleGrown(heldAt(900, 3600));
    const lossPerGain = result.metalLossMetres.value / result.gainKgM2.value;
    expect((lossPerGain * 0.159) / 0.000071).toBeCloseTo(1, 1);
  });

  it('doubles in four times the time', () => {
    const one = scaleGrown(heldAt(1000, 1000)).thicknessMetres.value;
    expect(scaleGrown(heldAt(1000, 4000)).thicknessMetres.value / one).toBeCloseTo(2, 6);
  });

  it('says what it did not count', () => {
    expect(scaleGrown(heldAt(650, 3600))).toMatchObject({
      thicknessMetres: { value: 0 },
      cautions: ['uncounted-below-700', 'long-gap'],
    });
    expect(scaleGrown(heldAt(1280, 100)).cautions).toEqual(['above-range']);
    expect(scaleGrown(heldAt(900, 100)).cautions).toEqual([]);
  });

  it('refuses a curve whose time stands still', () => {
    expect(() => scaleGrown(heldAt(900, 0))).toThrow(expect.objectContaining({ code: 'bad-input' }));
  });
});
