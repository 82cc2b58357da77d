import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  criticalSection,
  hardensThrough,
  idealDiameterNeeded,
  QUENCH_SEVERITY_PER_INCH,
} from '../../../hub/physics/steel/through-hardening.ts';
import { codes, numberOf, refusal } from './support.ts';

const STEEL_4140 = { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 };
const STEEL_1045 = { C: 0.45, Mn: 0.75, Si: 0.25 };

describe('section, severity and ideal diameter', () => {
  it('gives the diameter back in the ideal quench', () => {
    expect(idealDiameterNeeded('bar', 50, Number.POSITIVE_INFINITY)).toBeCloseTo(50, 9);
    expect(criticalSection('bar', 50, Number.POSITIVE_INFINITY)).toBeCloseTo(50, 6);
  });

  it('meets the one-term solution worked by hand: a 1 in bar in still water needs DI 1.67 in', () => {
    // H 1 per inch, D 1 in: Bi 1, zeta 1.2558, A 1.2071, Fo = ln(2.4142)/1.577 = 0.5589;
    // ideal Fo 0.2005; DI = sqrt(0.5589 / 0.2005) = 1.67 in.
    expect(idealDiameterNeeded('bar', 25.4, 1) / 25.4).toBeCloseTo(1.67, 2);
  });

  it('lets a plate harden through at less thickness than a bar, and more than half of it', () => {
    const bar = criticalSection('bar', 50, 0.45);
    const plate = criticalSection('plate', 50, 0.45);
    expect(plate).toBeLessThan(bar);
    expect(plate).toBeGreaterThan(bar / 2);
  });

  it('goes there and back, and grows with ideal diameter and with severity', () => {
    const severity = fc.double({ min: 0.05, max: 8, noNaN: true });
    const diameter = fc.double({ min: 5, max: 250, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom('bar' as const, 'plate' as const),
        severity,
        diameter,
        (shape, h, ideal) => {
          const section = criticalSection(shape, ideal, h);
          expect(criticalSection(shape, ideal * 1.05, h)).toBeGreaterThan(section);
          expect(criticalSection(shape, ideal, h * 1.05)).toBeGreaterThan(section);
          expect(section).toBeLessThan(ideal);
          if (section > 0.5) expect(idealDiameterNeeded(shape, section, h) / ideal).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('refuses sections and severities that mean nothing', () => {
    expect(refusal(() => idealDiameterNeeded('bar', 0, 1))).toBe('out-of-range');
    expect(refusal(() => criticalSection('bar', 50, 0))).toBe('out-of-range');
    expect(refusal(() => criticalSection('bar', Number.NaN, 1))).toBe('out-of-range');
  });

  it('orders the media from air to brine', () => {
    const middles = Object.values(QUENCH_SEVERITY_PER_INCH).map(([low, high]) => (low + high) / 2);
    expect(middles).toEqual([...middles].sort((a, b) => a - b));
  });
});

describe('hardensThrough', () => {
  it('hardens a 25 mm bar of 4140 in oil and not a 25 mm bar of 1045', () => {
    // Common practice, no source: 4140 is an oil-hardening machinery steel, 1045 a shallow-hardening one.
    const alloy = hardensThrough({
      composition: STEEL_4140,
      shape: 'bar',
      sectionMm: 25,
      medium: 'good-oil',
    });
    const plain = hardensThrough({
      composition: STEEL_1045,
      shape: 'bar',
      sectionMm: 25,
      medium: 'good-oil',
    });
    expect(alloy.hardensThrough).toBe('yes');
    expect(plain.hardensThrough).toBe('no');
  });

  it('hardens a 1045 blade blank of 3 mm in water and not in air', () => {
    const blank = { composition: STEEL_1045, shape: 'plate', sectionMm: 3 } as const;
    expect(hardensThrough({ ...blank, medium: 'strong-water' }).hardensThrough).toBe('yes');
    expect(hardensThrough({ ...blank, medium: 'still-air' }).hardensThrough).toBe('no');
  });

  it('calls a section inside the band borderline', () => {
    const probe = { composition: STEEL_4140, shape: 'bar', medium: 'good-oil' } as const;
    const { critical } = hardensThrough({ ...probe, sectionMm: 25 });
    expect(critical.low).toBeLessThan(numberOf(critical));
    expect(hardensThrough({ ...probe, sectionMm: numberOf(critical) }).hardensThrough).toBe('borderline');
    expect(critical.standing).toBe('derived-here');
  });

  it('does not know where ASTM A255 has no factor', () => {
    const answer = hardensThrough({
      composition: { C: 1, Mn: 0.35, Cr: 1.45 },
      shape: 'bar',
      sectionMm: 20,
      medium: 'good-oil',
    });
    expect(answer.hardensThrough).toBe('unknown');
    expect(codes(answer.critical)).toEqual(['outside-validity']);
  });
});
