import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ScheduleDraft } from '../../hub/contract/schedule.ts';
import { planReasonWords } from '../../hub/contract/words/en-planning.ts';
import { GRADES } from '../../hub/physics/steel/catalogue.ts';
import { checkPlan } from '../../hub/planning/check.ts';
import { proposePlan } from '../../hub/planning/propose.ts';
import { ask, forge, oven, piece, plan } from './shop.ts';

describe('a schedule out of the steel', () => {
  it('anneals 1084 inside the handbook window and cools no faster than the handbook allows', () => {
    // 1080 and 1084: full anneal 815 to 830 °C, at most 28 °C/h down to 650 °C (from memory: Heat Treater's Guide).
    const { segments } = proposePlan(ask());
    const [, soak, cool] = segments;
    expect(soak?.targetCelsius).toBeGreaterThanOrEqual(815);
    expect(soak?.targetCelsius).toBeLessThanOrEqual(830);
    expect(cool).toMatchObject({ medium: 'furnace', maximumRateCelsiusPerHour: 28, targetCelsius: 650 });
  });

  it('holds a small normalise a quarter of an hour and a large one an hour, once it is hot throughout', () => {
    // USAF T.O. 1-1A-9, table 7-5 notes: 15 min (small) to 1 h (large) after the piece is uniformly hot.
    const of = (mm: number) =>
      proposePlan(ask({ step: 'normalise', pieces: [piece('1045', 'normalise', mm)] })).segments[1];
    expect(of(4)).toMatchObject({ durationSeconds: 900 });
    expect(of(80)).toMatchObject({ durationSeconds: 3600 });
  });

  it('adds the lag of the middle to the soak when the clock will run on the air', () => {
    const soakOf = (clock: 'core' | 'air') => {
      const soak = proposePlan(ask({ clock, pieces: [piece('1045', 'full-anneal', 50)] })).segments[1];
      return soak?.kind === 'soak' ? soak.durationSeconds : 0;
    };
    expect(soakOf('air')).toBeGreaterThan(soakOf('core') + 600);
  });

  it('tempers where the tables of the grade leave the wanted hardness', () => {
    // O1 tempered 2 h: 260 °C leaves about 58 HRC (supplier sheets, secondary: 57 to 59).
    const pieces = [piece('O1', 'temper', 6)];
    const { segments, target } = proposePlan(ask({ step: 'temper', pieces, wantedHrc: 58 }));
    expect(Math.abs((segments[1]?.targetCelsius ?? 0) - 260)).toBeLessThanOrEqual(25);
    expect(target.reason.code).toBe('target-for-hardness');
  });

  it('refuses to normalise an air-hardening steel, and to plan a forging heat', () => {
    expect(() => proposePlan(ask({ step: 'normalise', pieces: [piece('A2', 'normalise')] }))).toThrow(
      /must not be done to/,
    );
    expect(() => proposePlan(ask({ step: 'forge', pieces: [piece('1045', 'forge')] }))).toThrow(
      /led by the work/,
    );
  });

  it('refuses steels whose windows do not overlap rather than splitting the difference', () => {
    const pieces = [piece('1084', 'harden'), piece('D2', 'harden')];
    expect(() => proposePlan(ask({ step: 'harden', pieces }))).toThrow(/do not overlap/);
  });

  it('refuses a hardness that no temper leaves', () => {
    const pieces = [piece('1045', 'temper')];
    expect(() => proposePlan(ask({ step: 'temper', pieces, wantedHrc: 69 }))).toThrow(/no temper/);
  });

  it('gives a reason in words with its standing for every number it set', () => {
    const { reasons } = proposePlan(ask({ furnace: forge }));
    const paths = new Set(reasons.map(({ path }) => path));
    expect(paths).toContain('/segments/1/durationSeconds');
    expect(paths).toContain('/segments/2/maximumRateCelsiusPerHour');
    for (const { code, params, from } of reasons) {
      expect(planReasonWords(code, params, '[degF]')).not.toMatch(/undefined|NaN|unknown/);
      expect(from.standing).toBeTruthy();
    }
  });

  it('passes its own check for every grade and step that it will plan at all', () => {
    const steps = [
      'normalise',
      'full-anneal',
      'sub-critical-anneal',
      'stress-relief',
      'harden',
      'temper',
    ] as const;
    const property = fc.property(
      fc.constantFrom(...GRADES.map((grade) => grade.id)),
      fc.constantFrom(...steps),
      fc.integer({ min: 2, max: 40 }),
      (grade, step, mm) => {
        const pieces = [piece(grade, step, mm)];
        const made = attempt(() => proposePlan(ask({ step, pieces, furnace: oven })));
        if (made === null) return;
        expect(ScheduleDraft.safeParse({ name: 'x', segments: [...made.segments] }).success).toBe(true);
        const faults = checkPlan(plan({ segments: made.segments, pieces }));
        expect(faults.filter(({ weight }) => weight === 'wrong')).toEqual([]);
      },
    );
    fc.assert(property, { numRuns: 30, seed: 7 });
  });
});

function attempt<T>(make: () => T): T | null {
  try {
    return make();
  } catch {
    return null;
  }
}
