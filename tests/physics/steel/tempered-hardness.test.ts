import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GRADES } from '../../../hub/physics/steel/catalogue.ts';
import { hollomonJaffe } from '../../../hub/physics/steel/hollomon-jaffe.ts';
import type { TemperHistory } from '../../../hub/physics/steel/temper-history.ts';
import { GRANGE_BAUGHMAN_1080 } from '../../../hub/physics/steel/temper-sets-grange-baughman.ts';
import { HANDBOOK_H13, HANDBOOK_O1 } from '../../../hub/physics/steel/temper-sets-handbook.ts';
import { temperedHardness } from '../../../hub/physics/steel/tempered-hardness.ts';
import { codes, numberOf, refusal, temperableSteel } from './support.ts';

function hold(celsius: number, hours: number): TemperHistory {
  return { kind: 'hold', celsius, hours };
}

const STEEL_1080 = { composition: { C: 0.8, Mn: 0.75, Si: 0.25 }, measured: [GRANGE_BAUGHMAN_1080] };

describe('temperedHardness', () => {
  it('takes the measured curve of the grade first and states the parameter with its constant', () => {
    const answer = temperedHardness(STEEL_1080, hold(315.6, 1));
    expect(numberOf(answer.hardnessHrc)).toBeCloseTo(56.7, 1);
    expect(answer.hardnessHrc.formula).toBe('1080, Grange & Baughman 1956');
    expect(answer.constant).toBeCloseTo(21.3 - 5.8 * 0.8, 9);
    expect(answer.parameter).toBeCloseTo(hollomonJaffe(315.6, 1, answer.constant), 9);
  });

  it('never claims less than 2 HRC either way, and lists the other opinions', () => {
    const { hardnessHrc, opinions } = temperedHardness(STEEL_1080, hold(250, 2));
    const value = numberOf(hardnessHrc);
    expect(value - (hardnessHrc.low ?? value)).toBeGreaterThanOrEqual(2);
    expect((hardnessHrc.high ?? value) - value).toBeGreaterThanOrEqual(2);
    expect(opinions.map((opinion) => opinion.formula)).toContain('Hollomon-Jaffe master curves');
    expect(opinions.map((opinion) => opinion.formula)).toContain('regression over measured sets');
  });

  it('widens the band to what the other opinions say, as for 5160 at 300 °C where the data scatter', () => {
    const grade = GRADES.find((item) => item.id === '5160');
    if (grade === undefined) throw new Error('5160 is in the catalogue');
    const steel = { composition: grade.nominal, measured: grade.temperSets };
    const { hardnessHrc } = temperedHardness(steel, hold(300, 2.5));
    // Penha 2010: 44.1 after 2.5 h, 50.0 after 1 h.
    expect(hardnessHrc.low).toBeLessThan(44.1);
    expect(hardnessHrc.high).toBeGreaterThan(50);
  });

  it('judges a measured curve like the hold it amounts to', () => {
    const HOUR = 3_600_000;
    const readings = [
      { atMs: 0, celsius: 20 },
      { atMs: HOUR, celsius: 200 },
      { atMs: 3 * HOUR, celsius: 200 },
      { atMs: 4 * HOUR, celsius: 20 },
    ];
    const measured = numberOf(temperedHardness(STEEL_1080, { kind: 'curve', readings }).hardnessHrc);
    expect(measured).toBeLessThan(numberOf(temperedHardness(STEEL_1080, hold(200, 2)).hardnessHrc));
    expect(measured).toBeGreaterThan(numberOf(temperedHardness(STEEL_1080, hold(200, 2.3)).hardnessHrc));
  });

  it('flags a curve without stated time, and secondary hardening', () => {
    const o1 = { composition: HANDBOOK_O1.composition, measured: [HANDBOOK_O1] };
    expect(codes(temperedHardness(o1, hold(204, 1)).hardnessHrc)).toContain('time-not-stated');
    const h13 = { composition: HANDBOOK_H13.composition, measured: [HANDBOOK_H13] };
    expect(codes(temperedHardness(h13, hold(565, 2)).hardnessHrc)).toContain('secondary-hardening');
  });

  it('refuses a steel that nothing speaks for instead of guessing', () => {
    const highSpeed = { composition: { C: 0.85, Cr: 4, Mo: 5, W: 6, V: 2 } };
    const { hardnessHrc, opinions } = temperedHardness(highSpeed, hold(560, 2));
    expect(hardnessHrc).toMatchObject({ value: null, reason: { code: 'outside-validity' } });
    expect(opinions).toEqual([]);
  });

  it('marks a number under 20 HRC as below scale', () => {
    const soft = temperedHardness(
      { composition: { C: 0.45, Mn: 0.75, Si: 0.25 } },
      hold(700, 20),
    ).hardnessHrc;
    expect(numberOf(soft)).toBeLessThan(20);
    expect(codes(soft)).toContain('below-scale');
  });

  it('refuses temperatures at which nothing is tempered', () => {
    expect(refusal(() => temperedHardness(STEEL_1080, hold(760, 1)))).toBe('out-of-range');
    expect(refusal(() => temperedHardness(STEEL_1080, hold(200, 0)))).toBe('out-of-range');
    expect(refusal(() => temperedHardness({ composition: { C: 3 } }, hold(200, 1)))).toBe('out-of-range');
  });

  it('says from memory when the leading curve is recalled', () => {
    const d2 = GRADES.find((grade) => grade.id === 'D2');
    if (d2 === undefined) throw new Error('D2 is in the catalogue');
    const answer = temperedHardness(
      { composition: d2.nominal, measured: d2.temperSets },
      hold(205, 2),
    ).hardnessHrc;
    expect(answer.standing).toBe('from-memory');
    expect(Math.abs(numberOf(answer) - 60.5)).toBeLessThan(2);
  });
});

describe('laws of tempering', () => {
  const temper = fc.record({
    celsius: fc.double({ min: 100, max: 690, noNaN: true }),
    hours: fc.double({ min: 0.01, max: 30, noNaN: true }),
    factor: fc.double({ min: 1.01, max: 5, noNaN: true }),
    hotter: fc.double({ min: 0.5, max: 30, noNaN: true }),
  });
  const plainGrades = GRADES.filter((grade) => grade.temperSets.every((set) => !set.secondaryHardening));

  it('more time or more heat never raises the hardness of any steel by composition', () => {
    fc.assert(
      fc.property(temperableSteel, temper, (composition, { celsius, hours, factor, hotter }) => {
        const at = (t: number, h: number) =>
          numberOf(temperedHardness({ composition }, hold(t, h)).hardnessHrc);
        const start = at(celsius, hours);
        expect(at(celsius, hours * factor)).toBeLessThanOrEqual(start + 1e-9);
        expect(at(celsius + hotter, hours)).toBeLessThanOrEqual(start + 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it('nor of any grade with measured curves, across the joins to the regression', () => {
    fc.assert(
      fc.property(fc.constantFrom(...plainGrades), temper, (grade, { celsius, hours, factor }) => {
        const steel = { composition: grade.nominal, measured: grade.temperSets };
        const [less, more] = [hours, hours * factor].map(
          (h) => temperedHardness(steel, hold(celsius, h)).hardnessHrc,
        );
        if (less === undefined || more === undefined || less.value === null || more.value === null) return;
        expect(more.value).toBeLessThanOrEqual(less.value + 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it('holds the value in its band, at least 2 HRC wide either way', () => {
    fc.assert(
      fc.property(temperableSteel, temper, (composition, { celsius, hours }) => {
        const { hardnessHrc } = temperedHardness({ composition }, hold(celsius, hours));
        const value = numberOf(hardnessHrc);
        expect(value - (hardnessHrc.low ?? value)).toBeGreaterThanOrEqual(2 - 1e-9);
        expect((hardnessHrc.high ?? value) - value).toBeGreaterThanOrEqual(2 - 1e-9);
      }),
      { numRuns: 150 },
    );
  });
});
