/**
 * Windows of the steps for a steel that no table lists, from its critical
 * temperatures. Trade rules, so every one is `common-practice`.
 */
import { type Composition, percentOf } from './composition.ts';
import { criticalTemperatures } from './critical.ts';
import type { Estimate, Provenance } from './estimate.ts';
import { type Grade, type StepName, type StepWindow, window } from './grade.ts';
import { EUTECTOID_CARBON_PERCENT } from './iron-carbon.ts';

function rule(source: string): Provenance {
  return { standing: 'common-practice', source };
}

/** Above this the carbides rule the hardening heat, and rules from Ac1 would under-harden it. */
const HIGH_ALLOY_PERCENT = 4;
/** 50 °F/h, the rule for plain carbon steel. */
const FULL_ANNEAL_COOLING = { maxCoolingCelsiusPerHour: 28, coolToCelsius: 650 } as const;

const STRESS_RELIEF = window(
  'stress-relief',
  550,
  650,
  rule('unalloyed and low-alloy steel; trade pages give 427 to 705 °C'),
  {
    note: 'annealed pieces only; a hardened piece stays 15 °C below its last temper',
  },
);

/**
 * Windows that follow from composition, °C: normalise, full anneal, austenitise,
 * sub-critical anneal, spheroidise, stress relief. Empty for high-alloy steel
 * (A2, D2, S7, H13): there only a data sheet helps.
 *
 * @throws PhysicsError as {@link criticalTemperatures}
 */
export function derivedWindows(composition: Composition): readonly StepWindow[] {
  if (carbideFormers(composition) > HIGH_ALLOY_PERCENT) return [];
  const { ac1, ac3, acm } = criticalTemperatures(composition);
  if (ac1.value === null || ac3.value === null) return [];
  const hyper = composition.C > EUTECTOID_CARBON_PERCENT;
  const upper: Estimate = hyper && acm.value !== null ? acm : ac3;
  const lower: Estimate = hyper ? ac1 : ac3;
  const [above, full] = hyper ? ['Acm', 'Ac1'] : ['Ac3', 'Ac3'];
  const ends = [lower.value + 30, lower.high + 65] as const;
  const normaliseTo = Math.max(upper.high + 40, ac3.high + 120);
  return [
    window('normalise', upper.value + 30, normaliseTo, rule(`30 °C and more above ${above}`)),
    window('full-anneal', ...ends, rule(`30 to 65 °C above ${full}`), FULL_ANNEAL_COOLING),
    window('austenitise', ...ends, rule(`30 to 65 °C above ${full}`)),
    ...belowAc1(ac1),
    STRESS_RELIEF,
  ];
}

function carbideFormers(composition: Composition): number {
  return (['Cr', 'Mo', 'V', 'W'] as const).reduce((sum, element) => sum + percentOf(composition, element), 0);
}

function belowAc1(ac1: Estimate): StepWindow[] {
  const from = rule('20 to 50 °C below Ac1');
  const [low, high] = [ac1.value - 50, ac1.value - 20];
  return [
    window('sub-critical-anneal', low, high, from),
    window('spheroidise', low, high, from, {
      holdHours: [8, 16],
      note: 'hold long; plain carbon steel may cycle about Ac1',
    }),
  ];
}

/**
 * All windows of a grade: what its row says, and derived ones for steps that the
 * row leaves open. Steps not recommended for the grade are left out.
 */
export function windowsOf(grade: Grade): readonly StepWindow[] {
  const stated = new Set<StepName>(grade.windows.map((item) => item.step));
  const derived = derivedWindows(grade.nominal).filter(
    (item) => !stated.has(item.step) && !grade.notRecommended.includes(item.step),
  );
  return [...grade.windows, ...derived];
}
