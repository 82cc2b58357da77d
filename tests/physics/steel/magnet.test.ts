import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalTemperatures } from '../../../hub/physics/steel/critical.ts';
import { magnetAnswer } from '../../../hub/physics/steel/magnet.ts';
import { anySteel, numberOf, refusal } from './support.ts';

const STEEL = {
  '1020': { C: 0.2, Mn: 0.45, Si: 0.2 },
  '1045': { C: 0.45, Mn: 0.75, Si: 0.25 },
  '1084': { C: 0.85, Mn: 0.75, Si: 0.25 },
  '1095': { C: 0.95, Mn: 0.4, Si: 0.25 },
  '9260': { C: 0.6, Mn: 0.88, Si: 2 },
  H13: { C: 0.38, Mn: 0.4, Si: 1, Cr: 5.1, Mo: 1.4, V: 1 },
  D2: { C: 1.5, Mn: 0.35, Si: 0.35, Cr: 12, Mo: 0.95, V: 0.8 },
} as const;

describe('where magnetism goes on heating', () => {
  it('is the Curie point, 770 °C, for mild steel', () => {
    const answer = magnetAnswer(STEEL['1020']);
    expect(numberOf(answer.lost)).toBe(770);
    expect(answer.cause).toBe('curie');
    expect(answer.proves).toBe('above-770');
  });

  it('is the end of transformation, below 770 °C, for medium and high carbon steel', () => {
    for (const steel of [STEEL['1045'], STEEL['1084'], STEEL['1095']]) {
      const answer = magnetAnswer(steel);
      expect(answer.cause).toBe('end-of-transformation');
      expect(numberOf(answer.lost)).toBeLessThan(770);
      expect(answer.proves).toBe('above-ac1');
    }
  });

  it('changes sides at 0.476 % C in plain iron-carbon', () => {
    // Andrews' carbon term: 910 - 203 sqrt(C) = 770 gives C = 0.4756 %.
    expect(magnetAnswer({ C: 0.47 }).cause).toBe('curie');
    expect(magnetAnswer({ C: 0.48 }).cause).toBe('end-of-transformation');
  });

  it('covers what eutectoid steel does on ordinary heating, 730 to 750 °C', () => {
    // Common practice and Colvin & Juthe, The Working of Steel (1921): lost at the critical point.
    const { lost } = magnetAnswer(STEEL['1084']);
    expect(lost.low).toBeLessThan(730);
    expect(lost.high).toBeGreaterThan(745);
  });

  it('proves nothing for steel whose Ac1 lies above the Curie point', () => {
    for (const steel of [STEEL.H13, STEEL['9260']]) {
      const answer = magnetAnswer(steel);
      expect(answer.cause).toBe('curie-before-transformation');
      expect(answer.proves).toBe('nothing');
    }
  });

  it('says not to use a magnet where Ac1 is not known', () => {
    const answer = magnetAnswer(STEEL.D2);
    expect(answer.lost).toMatchObject({ value: null, reason: { code: 'outside-validity' } });
    expect(answer.meaning[0]?.message).toContain('do not use a magnet');
  });
});

describe('magnet plus about 100 °C', () => {
  it('comes out at 860 to 870 °C for low and medium carbon steel', () => {
    // Common practice, no source: the forge anneal heat.
    for (const steel of [
      STEEL['1020'],
      { C: 0.3, Mn: 0.75, Si: 0.25 },
      { C: 0.4, Mn: 0.75, Si: 0.25 },
      STEEL['1045'],
    ]) {
      const { plus } = magnetAnswer(steel);
      expect(numberOf(plus)).toBeGreaterThanOrEqual(860);
      expect(numberOf(plus)).toBeLessThanOrEqual(870);
    }
  });

  it('means wholly austenite for 1045, and carbides dissolving for 1095', () => {
    const medium = magnetAnswer(STEEL['1045']).meaning.map((item) => item.code);
    expect(medium).toEqual(['fully-transformed']);
    const high = magnetAnswer(STEEL['1095']).meaning.map((item) => item.code);
    expect(high).toContain('above-acm');
    expect(high).not.toContain('carbides-remain');
  });

  it('leaves carbides in 1095 with a smaller step', () => {
    const codes = magnetAnswer(STEEL['1095'], 30).meaning.map((item) => item.code);
    expect(codes).toContain('carbides-remain');
    expect(codes).not.toContain('above-acm');
  });

  it('is short of transformation for H13 and coarsens grain at magnet plus 200', () => {
    expect(magnetAnswer(STEEL.H13).meaning.map((item) => item.code)).toEqual(['partly-transformed']);
    expect(magnetAnswer(STEEL.H13, 0).meaning.map((item) => item.code)).toEqual(['below-transformation']);
    expect(magnetAnswer(STEEL['1045'], 200).meaning.map((item) => item.code)).toContain('grain-coarsening');
  });

  it('adds exactly what was asked and widens the band, and refuses nonsense', () => {
    const { lost, plus } = magnetAnswer(STEEL['1045'], 60);
    expect(numberOf(plus) - numberOf(lost)).toBeCloseTo(60, 9);
    expect((plus.high ?? 0) - (plus.low ?? 0)).toBeGreaterThan((lost.high ?? 0) - (lost.low ?? 0));
    expect(refusal(() => magnetAnswer(STEEL['1045'], -5))).toBe('out-of-range');
  });
});

it('never lies above the Curie point nor, when transformation ends first, off Ac3', () => {
  fc.assert(
    fc.property(anySteel, (steel) => {
      const { lost, cause } = magnetAnswer(steel);
      if (lost.value === null) return;
      expect(lost.value).toBeLessThanOrEqual(770);
      if (cause === 'end-of-transformation') expect(lost.value).toBe(criticalTemperatures(steel).ac3.value);
    }),
    { numRuns: 200 },
  );
});
