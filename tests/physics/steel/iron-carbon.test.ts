import { describe, expect, it } from 'vitest';
import { acm, carbonClass, slowCooledFractions } from '../../../hub/physics/steel/iron-carbon.ts';
import { codes, numberOf, refusal } from './support.ts';

describe('lever rule', () => {
  it('meets the worked values for 0.45 and 0.95 % C', () => {
    // Worked with 0.022 / 0.76 / 6.70 % C, as textbook pages do.
    const medium = slowCooledFractions(0.45);
    expect(medium.pearlite).toBeCloseTo(0.58, 3);
    expect(medium.proeutectoidFerrite).toBeCloseTo(0.42, 3);
    expect(slowCooledFractions(0.95).proeutectoidCementite).toBeCloseTo(0.032, 3);
  });

  it('sums to one on both sides and is all pearlite at the eutectoid', () => {
    for (const carbon of [0.03, 0.3, 0.76, 1, 2]) {
      const { pearlite, proeutectoidFerrite, proeutectoidCementite } = slowCooledFractions(carbon);
      expect(pearlite + proeutectoidFerrite + proeutectoidCementite).toBeCloseTo(1, 12);
    }
    expect(slowCooledFractions(0.76).pearlite).toBe(1);
  });

  it('refuses pure iron and cast iron', () => {
    expect(refusal(() => slowCooledFractions(0.01))).toBe('out-of-range');
    expect(refusal(() => slowCooledFractions(2.5))).toBe('out-of-range');
  });
});

describe('Acm', () => {
  it.each([
    [0.95, 785],
    [1, 800],
    [1.1, 830],
    [1.2, 861],
  ])('lies on the chord at %f %% C', (carbon, celsius) => {
    // Chord between the published invariant points (0.76 %, 727 °C) and (2.14 %, 1147 °C).
    expect(numberOf(acm({ C: carbon }))).toBeCloseTo(celsius, 0);
  });

  it('holds what diagrams read: 800 to 810 at 1.0 %, 880 to 890 at 1.2 %', () => {
    // From memory: Fe-Fe3C diagram, ASM. The line is convex, so it lies above the chord.
    expect(acm({ C: 1 }).high).toBeGreaterThan(810);
    expect(acm({ C: 1.2 }).high).toBeGreaterThan(890);
    expect(acm({ C: 1.2 }).low).toBeLessThan(880);
  });

  it('opens the band upwards for 52100, which is normalised above Acm at 885 °C', () => {
    const answer = acm({ C: 1, Mn: 0.35, Si: 0.25, Cr: 1.45 });
    expect(codes(answer)).toContain('alloy-raises-acm');
    expect(answer.high).toBeGreaterThanOrEqual(885);
  });

  it('has no value where no carbide remains', () => {
    expect(acm({ C: 0.77 })).toMatchObject({ value: null, reason: { code: 'not-hypereutectoid' } });
    expect(acm({ C: 0.78 }).value).not.toBeNull();
  });
});

describe('carbonClass', () => {
  it('keeps a strip about the eutectoid where both logics hold', () => {
    expect(carbonClass({ C: 0.6 })).toBe('hypoeutectoid');
    expect(carbonClass({ C: 0.8 })).toBe('near-eutectoid');
    expect(carbonClass({ C: 0.95 })).toBe('hypereutectoid');
  });
});
