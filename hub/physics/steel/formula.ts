/**
 * Regression formulas as data: constant, terms, validity, source, standing.
 *
 * Kept as data so that a page can list what each formula says and why it was
 * or was not used, and so that a sign can be checked by eye against the paper.
 */
import {
  type Composition,
  type Element,
  type ElementRanges,
  type Outside,
  outsideOf,
  percentOf,
} from './composition.ts';
import type { Provenance } from './estimate.ts';

/** `k * (1 - exp(-rate * element))`: a term that flattens, as carbon's does on Ms. */
export interface SaturatingTerm {
  readonly k: number;
  readonly element: Element;
  readonly rate: number;
}

/** A temperature as a function of composition (mass percent). */
export interface CompositionFormula {
  readonly name: string;
  readonly from: Provenance;
  /** Unit of the published formula; {@link evaluate} always answers in °C. */
  readonly unit: 'celsius' | 'fahrenheit';
  readonly constant: number;
  readonly linear: Readonly<Partial<Record<Element, number>>>;
  readonly sqrtCarbon?: number;
  /** `[k, a, b]` stands for `k * a * b`; a square is written with the element twice. */
  readonly products?: readonly (readonly [number, Element, Element])[];
  readonly saturating?: SaturatingTerm;
  readonly range: ElementRanges;
  readonly rangeFrom: Provenance;
  /** Standard error claimed for the formula in °C, null where none is known. */
  readonly errorCelsius: number | null;
}

/** What one formula says about one steel. */
export interface FormulaReading {
  readonly formula: CompositionFormula;
  readonly celsius: number;
  readonly outside: readonly Outside[];
}

/** The formula's value in °C, whatever its validity; see {@link readFormula}. */
export function evaluate(formula: CompositionFormula, composition: Composition): number {
  let sum = formula.constant + (formula.sqrtCarbon ?? 0) * Math.sqrt(composition.C);
  for (const [element, k] of Object.entries(formula.linear) as [Element, number][]) {
    sum += k * percentOf(composition, element);
  }
  for (const [k, a, b] of formula.products ?? []) {
    sum += k * percentOf(composition, a) * percentOf(composition, b);
  }
  const bend = formula.saturating;
  if (bend !== undefined) sum += bend.k * (1 - Math.exp(-bend.rate * percentOf(composition, bend.element)));
  return formula.unit === 'fahrenheit' ? ((sum - 32) * 5) / 9 : sum;
}

/** The formula's value together with the elements that lie outside its validity. */
export function readFormula(formula: CompositionFormula, composition: Composition): FormulaReading {
  return {
    formula,
    celsius: evaluate(formula, composition),
    outside: outsideOf(composition, formula.range),
  };
}

/** Words for a list of elements outside a range, e.g. `Cr 5.1 % (0 to 5)`. */
export function describeOutside(outside: readonly Outside[]): string {
  return outside.map((item) => `${item.element} ${item.percent} % (${item.low} to ${item.high})`).join(', ');
}
