import { describe, expect, it } from 'vitest';
import { findGrade } from '../../../hub/physics/steel/catalogue.ts';
import { requireComposition } from '../../../hub/physics/steel/composition.ts';
import { describeProvenance, type Standing } from '../../../hub/physics/steel/estimate.ts';
import {
  type OwnSteelInput,
  outsideLimits,
  ownSteel,
  steelOfGrade,
} from '../../../hub/physics/steel/own-steel.ts';
import { refusal } from './support.ts';

function spring(composition: Record<string, number>): OwnSteelInput {
  const grade = findGrade('5160');
  if (grade === null) throw new Error('5160 is in the catalogue');
  return { id: 'own-1', title: 'Leaf spring, batch 7', composition, grade };
}

describe("the user's own steel", () => {
  it('takes over windows and tempering curves when the certificate fits the grade', () => {
    const steel = ownSteel(spring({ C: 0.61, Mn: 0.9, Si: 0.25, Cr: 0.82 }));
    expect(steel.flags).toEqual([]);
    expect(steel.measured.map((set) => set.id)).toEqual(['penha-5160']);
    expect(steel.composition.C).toBe(0.61);
    expect(steel.windows.find((item) => item.step === 'austenitise')?.from.standing).toBe(
      'published-secondary',
    );
  });

  it('computes from the certificate alone when it does not, and says which element', () => {
    const steel = ownSteel(spring({ C: 0.61, Mn: 0.9, Si: 1.9, Cr: 0.82 }));
    expect(steel.flags[0]?.code).toBe('outside-grade-limits');
    expect(steel.flags[0]?.message).toContain('Si 1.9 %');
    expect(steel.measured).toEqual([]);
    expect(steel.windows.every((item) => item.from.standing === 'common-practice')).toBe(true);
  });

  it('does not judge an element that the certificate leaves out', () => {
    const { grade } = spring({});
    if (grade === undefined) throw new Error('has a grade');
    expect(outsideLimits(grade, { C: 0.6 })).toEqual([]);
    expect(outsideLimits(grade, { C: 0.7, Cr: 0.8 }).map((item) => item.element)).toEqual(['C']);
  });

  it('works without any grade', () => {
    const steel = ownSteel({ id: 'x', title: 'unknown bar', composition: { C: 0.7, Mn: 0.6 } });
    expect(steel.windows.map((item) => item.step)).toContain('austenitise');
    expect(steel.measured).toEqual([]);
  });

  it('turns a grade into a steel at its nominal composition', () => {
    const o1 = findGrade('O1');
    if (o1 === null) throw new Error('O1 is in the catalogue');
    expect(steelOfGrade(o1)).toMatchObject({
      id: 'O1',
      title: 'O1',
      composition: { C: 0.9, W: 0.5 },
      flags: [],
    });
  });
});

describe('requireComposition', () => {
  it('refuses a misspelt element and names the likely one', () => {
    expect(refusal(() => requireComposition({ C: 0.5, MN: 0.7 }))).toBe('bad-input');
    expect(() => requireComposition({ C: 0.5, MN: 0.7 })).toThrow('did you mean Mn?');
    expect(() => requireComposition({ C: 0.5, Xx: 0.7 })).toThrow('known are C, Mn');
  });

  it('refuses a steel without carbon, cast iron, and an alloy that is no steel', () => {
    expect(refusal(() => requireComposition({ Mn: 0.7 }))).toBe('bad-input');
    expect(refusal(() => requireComposition({ C: 3 }))).toBe('out-of-range');
    expect(refusal(() => requireComposition({ C: 0.1, Ni: 60 }))).toBe('out-of-range');
    expect(refusal(() => requireComposition({ C: 0.5, Mn: Number.POSITIVE_INFINITY }))).toBe('bad-input');
  });

  it('reads an element left undefined as absent', () => {
    expect(requireComposition({ C: 0.5, Cr: undefined })).toEqual({ C: 0.5 });
  });
});

it('every standing has words of its own', () => {
  const all: Standing[] = [
    'published-primary',
    'published-secondary',
    'from-memory',
    'common-practice',
    'derived-here',
  ];
  const words = all.map((standing) => describeProvenance({ standing, source: 'X' }));
  expect(new Set(words).size).toBe(5);
  expect(describeProvenance({ standing: 'common-practice', source: '' })).toBe('common practice, no source');
});
