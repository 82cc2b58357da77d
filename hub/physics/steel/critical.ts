/** The critical temperatures of one steel, in one answer. */
import { requireRange } from '../errors.ts';
import { AC1_FORMULAS, AC3_FORMULAS, ac1, ac3 } from './ac.ts';
import { type Composition, requireComposition } from './composition.ts';
import { coolingArrests, REFERENCE_COOLING_CELSIUS_PER_HOUR } from './cooling-arrests.ts';
import type { Answer, Provenance } from './estimate.ts';
import { type CompositionFormula, readFormula } from './formula.ts';
import { MS_FORMULAS } from './formulas-ms.ts';
import { acm } from './iron-carbon.ts';
import { martensiteTemperature, ms } from './martensite.ts';

export interface CriticalOptions {
  /** Carbon dissolved in austenite for Ms, mass %; the bulk carbon when left out. */
  readonly carbonInAustenitePercent?: number;
  /** Cooling rate for Ar1 and Ar3, 1 to 20 000 °C/h; 28 °C/h when left out. */
  readonly coolingCelsiusPerHour?: number;
}

/** All in °C. Where there is no number, `value` is null and `reason` says why. */
export interface CriticalTemperatures {
  readonly ac1: Answer;
  readonly ac3: Answer;
  readonly acm: Answer;
  readonly ms: Answer;
  /** 90 % martensite. */
  readonly m90: Answer;
  /** 99 % martensite, commonly called Mf. */
  readonly mf: Answer;
  readonly ar1: Answer;
  readonly ar3: Answer;
}

/**
 * Critical temperatures of a steel from its composition, °C, each with its band,
 * formula, standing and flags.
 *
 * Laws that hold for every steel it answers: Ac3 is never below Ac1, Ar3 never
 * below Ar1, Ar1 below Ac1, Acm never below Ac1.
 *
 * @param composition mass percent
 * @throws PhysicsError `bad-input` or `out-of-range` for a composition that is
 *   no steel, for carbon in austenite above the bulk carbon, or a cooling rate
 *   outside 1 to 20 000 °C/h
 */
export function criticalTemperatures(
  composition: Composition,
  options: CriticalOptions = {},
): CriticalTemperatures {
  const steel = requireComposition(composition);
  const carbon = requireRange(
    'Carbon in austenite',
    options.carbonInAustenitePercent ?? steel.C,
    0,
    steel.C,
    '%',
  );
  const start = ac1(steel);
  const heating = { ac1: start, ac3: ac3(steel, start) };
  const martensite = ms({ ...steel, C: carbon });
  const rate = options.coolingCelsiusPerHour ?? REFERENCE_COOLING_CELSIUS_PER_HOUR;
  return {
    ...heating,
    acm: notBelowAc1(acm(steel), start),
    ms: martensite,
    m90: martensiteTemperature(martensite, 0.9),
    mf: martensiteTemperature(martensite, 0.99),
    ...coolingArrests(steel, heating, rate),
  };
}

/** Just above the eutectoid the plain-carbon chord can fall below an alloyed steel's Ac1. */
function notBelowAc1(answer: Answer, start: Answer): Answer {
  if (answer.value === null || start.value === null) return answer;
  return {
    ...answer,
    value: Math.max(answer.value, start.value),
    low: Math.max(answer.low, start.low),
    high: Math.max(answer.high, start.high),
  };
}

/** What one formula says, and whether it may be believed for this steel. */
export interface FormulaOpinion {
  readonly formula: string;
  readonly celsius: number;
  readonly inValidity: boolean;
  /** Elements beyond the formula's validity, in words; empty inside it. */
  readonly outside: readonly string[];
  readonly from: Provenance;
  readonly rangeFrom: Provenance;
}

/**
 * What every formula says of a steel: the page's answer to "what do they
 * disagree on". Values outside validity are listed and marked, not hidden.
 */
export function formulaOpinions(composition: Composition): {
  readonly ac1: readonly FormulaOpinion[];
  readonly ac3: readonly FormulaOpinion[];
  readonly ms: readonly FormulaOpinion[];
} {
  const steel = requireComposition(composition);
  const ask = (formulas: readonly CompositionFormula[]) => formulas.map((formula) => opinion(formula, steel));
  return { ac1: ask(AC1_FORMULAS), ac3: ask(AC3_FORMULAS), ms: ask(MS_FORMULAS) };
}

function opinion(formula: CompositionFormula, composition: Composition): FormulaOpinion {
  const reading = readFormula(formula, composition);
  return {
    formula: formula.name,
    celsius: reading.celsius,
    inValidity: reading.outside.length === 0,
    outside: reading.outside.map((item) => `${item.element} ${item.percent} % (${item.low} to ${item.high})`),
    from: formula.from,
    rangeFrom: formula.rangeFrom,
  };
}
