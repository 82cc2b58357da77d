import { describe, expect, it } from 'vitest';
import {
  expectedHardness,
  fitHardnessCurve,
  parameterForHardness,
} from '../../../hub/physics/statistics/hardness-curve.ts';
import { hollomonJaffe } from '../../../hub/physics/steel/hollomon-jaffe.ts';
import { pairsOf } from '../../../hub/physics/steel/temper-set.ts';
import { HOLLOMON_JAFFE_SETS } from '../../../hub/physics/steel/temper-sets-hollomon-jaffe.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';

/** A made-up steel: 62 HRC at 13 000, falling 4 HRC a thousand, half a point of scatter. */
function pieces(count: number, seed: number) {
  const noise = seededNoise(seed);
  return Array.from({ length: count }, (_, i) => {
    const parameter = 13_000 + (4000 * i) / (count - 1);
    return { parameter, hardnessHrc: 62 - (parameter - 13_000) / 250 + 0.5 * noise() };
  });
}

describe('a tempering curve of the shop’s own', () => {
  it('finds the slope of the steel, and a band about it', () => {
    const curve = fitHardnessCurve(pieces(12, 1));
    const middle = expectedHardness(curve, 15_000);
    expect(Math.abs(middle.hardnessHrc - 54)).toBeLessThan(0.5);
    expect(middle.high - middle.low).toBeGreaterThan(0.8);
    expect(middle.high - middle.low).toBeLessThan(2.5);
    expect(middle.extrapolated).toBe(false);
  });

  it('says when it is asked beyond what was measured, with a wider band', () => {
    const curve = fitHardnessCurve(pieces(8, 2));
    const outside = expectedHardness(curve, 18_500);
    const inside = expectedHardness(curve, 15_000);
    expect(outside.extrapolated).toBe(true);
    expect(outside.high - outside.low).toBeGreaterThan(inside.high - inside.low);
  });

  it('fits curves measured by Hollomon and Jaffe (1945) to a point or two', () => {
    // Steel by steel in the constant that the authors give it; a parabola, as both ends of the curve are in it.
    for (const set of HOLLOMON_JAFFE_SETS.slice(0, 3)) {
      const measured = pairsOf(set)
        .filter((pair) => pair.hrc >= 20)
        .map((pair) => ({
          parameter: hollomonJaffe(pair.celsius, pair.hours, 19.5),
          hardnessHrc: pair.hrc,
        }));
      const { fit } = fitHardnessCurve(measured, 'parabola');
      expect(fit.rSquared).toBeGreaterThan(0.95);
      expect(fit.residualDeviation).toBeLessThan(2.5);
    }
  });
});

describe('the parameter for a wanted hardness', () => {
  it('lies on the curve, inside a band', () => {
    const curve = fitHardnessCurve(pieces(12, 3));
    const wanted = parameterForHardness(curve, 54);
    expect(expectedHardness(curve, wanted.parameter).hardnessHrc).toBeCloseTo(54, 6);
    expect(wanted.low ?? 0).toBeLessThan(wanted.parameter);
    expect(wanted.high ?? 0).toBeGreaterThan(wanted.parameter);
    expect(expectedHardness(curve, wanted.low ?? 0).low).toBeCloseTo(54, 6);
  });

  it('has an open end where the band runs out of what was measured', () => {
    const curve = fitHardnessCurve(pieces(12, 3));
    const edge = parameterForHardness(curve, expectedHardness(curve, 13_010).hardnessHrc);
    expect(edge.low).toBeNull();
    expect(edge.high).not.toBeNull();
  });

  it('is refused for a hardness that no piece came near', () => {
    const curve = fitHardnessCurve(pieces(12, 3));
    expect(() => parameterForHardness(curve, 65)).toThrow(expect.objectContaining({ code: 'no-solution' }));
  });
});

describe('a curve', () => {
  it('wants enough pieces, on the scale, and not all tempered alike', () => {
    expect(() => fitHardnessCurve(pieces(3, 1))).toThrow(expect.objectContaining({ code: 'bad-input' }));
    expect(() => fitHardnessCurve(pieces(5, 1), 'parabola')).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
    const alike = pieces(5, 1).map((piece) => ({ ...piece, parameter: 15_000 }));
    expect(() => fitHardnessCurve(alike)).toThrow(expect.objectContaining({ code: 'no-solution' }));
    const soft = pieces(5, 1).map((piece) => ({ ...piece, hardnessHrc: 12 }));
    expect(() => fitHardnessCurve(soft)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });
});
