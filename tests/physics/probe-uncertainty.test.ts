import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BudgetInput,
  type ChannelFacts,
  channelUncertainty,
  combineBudget,
  rectangularStandard,
  resolutionStandard,
} from '../../hub/physics/probe-uncertainty.ts';
import { codeOf } from './thermocouple-support.ts';

const typeK: ChannelFacts = { type: 'K', hotCelsius: 1000, coldJunctionCelsius: 25 };

/**
 * EA-4/02 example S5, temperature of the furnace in the calibration of a type N
 * thermocouple at 1000 °C, as carried in a public example file of an uncertainty
 * program; its stated result is u = 0.640870516811861 °C. Half-widths of the
 * resolution, switch, reference, drift and furnace lines: from memory: EA-4/02.
 */
const furnaceTemperature: readonly BudgetInput[] = [
  { name: 't_S observed', distribution: 'normal', standard: 0.1, unit: '°C', sensitivity: 1 },
  { name: 'δt_S calibration', distribution: 'normal', standard: 0.3 / 2, unit: '°C', sensitivity: 1 },
  { name: 'δV_iS1 voltmeter', distribution: 'normal', standard: 2 / 2, unit: 'µV', sensitivity: 0.077 },
  {
    name: 'δV_iS2 resolution',
    distribution: 'rectangular',
    standard: rectangularStandard(0.5),
    unit: 'µV',
    sensitivity: 0.077,
  },
  {
    name: 'δV_R switch',
    distribution: 'rectangular',
    standard: rectangularStandard(2),
    unit: 'µV',
    sensitivity: 0.077,
  },
  {
    name: 'δt_0S reference',
    distribution: 'rectangular',
    standard: rectangularStandard(0.1),
    unit: '°C',
    sensitivity: -0.077 / 0.189,
  },
  {
    name: 'δt_D drift',
    distribution: 'rectangular',
    standard: rectangularStandard(0.3),
    unit: '°C',
    sensitivity: 1,
  },
  {
    name: 'δt_F furnace',
    distribution: 'rectangular',
    standard: rectangularStandard(1),
    unit: '°C',
    sensitivity: 1,
  },
];

describe('combining a budget', () => {
  it('gives the published result of the EA-4/02 thermocouple example', () => {
    const { standardCelsius, expandedCelsius, budget } = combineBudget(furnaceTemperature);
    expect(standardCelsius).toBeCloseTo(0.640870516811861, 12);
    expect(expandedCelsius).toBeCloseTo(1.28174, 5);
    expect(budget.map((line) => line.name)).toEqual(furnaceTemperature.map((line) => line.name));
  });

  it('takes limits as rectangular: 0.40 gives 0.23 (JCGM 100:2008, 4.3.7 example 1, from memory)', () => {
    expect(rectangularStandard(0.4)).toBeCloseTo(0.23, 2);
    expect(rectangularStandard(0.4) ** 2).toBeCloseTo(0.0533, 4);
  });

  it('takes a digital step δ as 0.29 δ (JCGM 100:2008, F.2.2.1, from memory)', () => {
    expect(resolutionStandard(1)).toBeCloseTo(0.29, 2);
    expect(resolutionStandard(1)).toBeCloseTo(rectangularStandard(0.5), 12);
  });

  it('is never less than its largest line and never more than their sum', () => {
    const line = fc.record({
      name: fc.constant('line'),
      distribution: fc.constant('normal' as const),
      standard: fc.double({ min: 0, max: 100, noNaN: true }),
      unit: fc.constant('°C' as const),
      sensitivity: fc.double({ min: -5, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 8 }), (inputs) => {
        const { standardCelsius, budget } = combineBudget(inputs);
        const parts = budget.map((each) => each.contributionCelsius);
        expect(standardCelsius).toBeGreaterThanOrEqual(Math.max(...parts) - 1e-9);
        expect(standardCelsius).toBeLessThanOrEqual(parts.reduce((a, b) => a + b, 0) + 1e-9);
      }),
    );
  });

  it('refuses an empty budget and impossible figures', () => {
    const good: BudgetInput = { name: 'x', distribution: 'normal', standard: 1, unit: '°C', sensitivity: 1 };
    expect(codeOf(() => combineBudget([]))).toBe('bad-input');
    for (const bad of [
      { standard: -1 },
      { standard: Number.NaN },
      { standard: Infinity },
      { sensitivity: Number.NaN },
    ]) {
      expect(codeOf(() => combineBudget([{ ...good, ...bad }]))).toBe('bad-input');
    }
  });
});

describe('uncertainty of a channel', () => {
  it('takes the class as rectangular limits', () => {
    // K class 1 at 1000 °C is ±4.0 °C (IEC 60584-1).
    const found = channelUncertainty({ ...typeK, toleranceClass: 'iec-1' });
    expect(found.standardCelsius).toBeCloseTo(4 / Math.sqrt(3), 9);
    expect(found.budget).toHaveLength(1);
  });

  it('carries a junction error to the hot end by the ratio of the sensitivities', () => {
    // 1 °C at the junction is 1.04 °C at 1000 °C for K, 0.52 for S, 0.69 for N (computed from NIST SRD 60).
    const ratio = (type: 'K' | 'S' | 'N') =>
      channelUncertainty({ ...typeK, type, junctionHalfWidthCelsius: Math.sqrt(3) }).standardCelsius;
    expect(ratio('K')).toBeCloseTo(1.04, 2);
    expect(ratio('S')).toBeCloseTo(0.52, 2);
    expect(ratio('N')).toBeCloseTo(0.69, 2);
  });

  it('turns an emf step into degrees at the hot end', () => {
    // 7.8125 µV is 0.79 °C on type S at 500 °C (9.90 µV/°C) and 0.19 °C on K near 25 to 500 °C (computed).
    const step = { millivolts: 0.0078125 };
    const s = channelUncertainty({ ...typeK, type: 'S', hotCelsius: 500, digitiserStep: step });
    expect(s.standardCelsius * Math.sqrt(12)).toBeCloseTo(0.79, 2);
    const k = channelUncertainty({ ...typeK, hotCelsius: 25, digitiserStep: step });
    expect(k.standardCelsius * Math.sqrt(12)).toBeCloseTo(0.19, 2);
  });

  it('takes a step in °C as it stands', () => {
    const found = channelUncertainty({ ...typeK, digitiserStep: { celsius: 0.25 } });
    expect(found.standardCelsius).toBeCloseTo(0.25 / Math.sqrt(12), 12);
  });

  it('puts everything together in one budget', () => {
    const found = channelUncertainty({
      ...typeK,
      toleranceClass: 'iec-1',
      digitiserStep: { celsius: 0.25 },
      junctionHalfWidthCelsius: 2,
      correctionStandardCelsius: 0.8,
      others: [{ name: 'drift', standardCelsius: 3 }],
    });
    const expected = Math.hypot(4 / Math.sqrt(3), 0.25 / Math.sqrt(12), (1.0395 * 2) / Math.sqrt(3), 0.8, 3);
    expect(found.standardCelsius).toBeCloseTo(expected, 3);
    expect(found.expandedCelsius).toBe(2 * found.standardCelsius);
    expect(found.budget.map((line) => line.name)).toEqual([
      'class iec-1',
      'digitiser step',
      'cold junction',
      'correction',
      'drift',
    ]);
  });

  it('does not invent what it was not told', () => {
    expect(codeOf(() => channelUncertainty(typeK))).toBe('bad-input');
    expect(codeOf(() => channelUncertainty({ ...typeK, hotCelsius: 1100, toleranceClass: 'iec-1' }))).toBe(
      'not-applicable',
    );
    expect(
      codeOf(() => channelUncertainty({ ...typeK, hotCelsius: 1400, correctionStandardCelsius: 1 })),
    ).toBe('out-of-range');
    const coolB = { ...typeK, type: 'B', hotCelsius: 10, correctionStandardCelsius: 1 } as const;
    expect(codeOf(() => channelUncertainty(coolB))).toBe('not-applicable');
  });
});
