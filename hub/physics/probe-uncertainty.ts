/**
 * Combined uncertainty of a temperature channel by the rules of the GUM.
 *
 * Source: JCGM 100:2008 (GUM): rectangular limits 4.3.7, resolution of a digital
 * indication F.2.2.1, combination of uncorrelated inputs 5.1.2, expanded
 * uncertainty 6.2.1. From memory: clause numbers; the arithmetic is checked
 * against the worked example S5 of EA-4/02.
 */

import { PhysicsError } from './errors.ts';
import { emfSlopeMillivoltsPerCelsius } from './thermocouple.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';
import { toleranceBand } from './thermocouple-tolerance.ts';
import type { ToleranceClass } from './thermocouple-tolerance-table.ts';

/** One line of a budget: a standard uncertainty and what it does to the result. */
export interface BudgetInput {
  readonly name: string;
  /** How the standard uncertainty was found, for the record. */
  readonly distribution: 'rectangular' | 'normal';
  /** Standard uncertainty in `unit`, not below 0. */
  readonly standard: number;
  readonly unit: '°C' | 'mV' | 'µV';
  /** Change of the result in °C per `unit` of this input; its sign does not matter. */
  readonly sensitivity: number;
}

export interface BudgetLine extends BudgetInput {
  /** |sensitivity|·standard, °C. */
  readonly contributionCelsius: number;
}

export interface CombinedUncertainty {
  /** Combined standard uncertainty, °C. */
  readonly standardCelsius: number;
  /** Expanded uncertainty with `coverageFactor`: about 95 % when no single rectangular line dominates, °C. */
  readonly expandedCelsius: number;
  readonly coverageFactor: 2;
  /** Lines in the order given. */
  readonly budget: readonly BudgetLine[];
}

/** Standard uncertainty of a value known only to lie within ± `halfWidth` (GUM 4.3.7). */
export function rectangularStandard(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Standard uncertainty of a digital indication with this step: step/√12 (GUM F.2.2.1). */
export function resolutionStandard(step: number): number {
  return step / Math.sqrt(12);
}

/**
 * Root of the sum of squares of uncorrelated inputs, expanded with k = 2.
 *
 * @param inputs at least one
 * @throws PhysicsError `bad-input` for an empty budget, or a standard uncertainty
 *   that is negative or not finite, or a sensitivity that is not finite
 */
export function combineBudget(inputs: readonly BudgetInput[]): CombinedUncertainty {
  if (inputs.length === 0)
    throw new PhysicsError('bad-input', 'an uncertainty budget needs at least one line');
  const budget = inputs.map(toLine);
  const standardCelsius = Math.hypot(...budget.map((line) => line.contributionCelsius));
  return { standardCelsius, expandedCelsius: 2 * standardCelsius, coverageFactor: 2, budget };
}

function toLine(input: BudgetInput): BudgetLine {
  const sound = input.standard >= 0 && Number.isFinite(input.standard) && Number.isFinite(input.sensitivity);
  if (!sound) {
    const message = `budget line ${input.name}: ${input.standard} ${input.unit} with sensitivity ${input.sensitivity}`;
    throw new PhysicsError('bad-input', message, { input });
  }
  return { ...input, contributionCelsius: Math.abs(input.sensitivity) * input.standard };
}

/** What is known of a thermocouple channel. Everything left out is left out of the budget too. */
export interface ChannelFacts {
  readonly type: ThermocoupleType;
  readonly hotCelsius: number;
  readonly coldJunctionCelsius: number;
  /** Tolerance class of the wire; leave out when a calibration correction replaces it. */
  readonly toleranceClass?: ToleranceClass;
  /** Smallest step of the digitiser: of the emf, or of the temperature it reports. */
  readonly digitiserStep?: { readonly millivolts: number } | { readonly celsius: number };
  /** Error limit of the cold-junction sensor, ± °C. */
  readonly junctionHalfWidthCelsius?: number;
  /** Standard uncertainty of the correction applied to the channel, °C. */
  readonly correctionStandardCelsius?: number;
  /** Anything else that is known, e.g. drift found in service, as standard uncertainties in °C. */
  readonly others?: readonly { readonly name: string; readonly standardCelsius: number }[];
}

/**
 * Combined uncertainty of a thermocouple channel at a temperature.
 *
 * Lines: class and junction as rectangular limits, digitiser step as resolution,
 * correction as given. A junction error δ shifts the hot end by
 * δ·S(cold)/S(hot), an emf step by step/S(hot), S being dE/dt. Drift, lead wire,
 * immersion and noise are in it only when given in `others`.
 *
 * @throws PhysicsError `out-of-range` when a temperature lies outside the reference
 *   function; `not-applicable` when the class does not reach this temperature or
 *   the type has no usable slope there (cool type B); `bad-input` for an empty
 *   budget or a negative figure
 */
export function channelUncertainty(facts: ChannelFacts): CombinedUncertainty {
  const sensitivity = hotSensitivity(facts.type, facts.hotCelsius);
  return combineBudget([
    ...classLine(facts),
    ...digitiserLine(facts, sensitivity),
    ...junctionLine(facts, sensitivity),
    ...correctionLine(facts),
    ...(facts.others ?? []).map(({ name, standardCelsius }) => celsiusLine(name, 'normal', standardCelsius)),
  ]);
}

/** °C of hot-end temperature per mV of emf. */
function hotSensitivity(type: ThermocoupleType, hotCelsius: number): number {
  const slope = emfSlopeMillivoltsPerCelsius(type, hotCelsius);
  if (slope > 0) return 1 / slope;
  const message = `type ${type} has no rising emf at ${hotCelsius} °C, so no uncertainty follows from it`;
  throw new PhysicsError('not-applicable', message, { type, hotCelsius });
}

function celsiusLine(name: string, distribution: BudgetInput['distribution'], standard: number): BudgetInput {
  return { name, distribution, standard, unit: '°C', sensitivity: 1 };
}

function classLine(facts: ChannelFacts): BudgetInput[] {
  if (facts.toleranceClass === undefined) return [];
  const { halfWidthCelsius } = toleranceBand(facts.type, facts.toleranceClass, facts.hotCelsius);
  return [celsiusLine(`class ${facts.toleranceClass}`, 'rectangular', rectangularStandard(halfWidthCelsius))];
}

function digitiserLine(facts: ChannelFacts, sensitivity: number): BudgetInput[] {
  const step = facts.digitiserStep;
  if (step === undefined) return [];
  if ('celsius' in step)
    return [celsiusLine('digitiser step', 'rectangular', resolutionStandard(step.celsius))];
  const standard = resolutionStandard(step.millivolts);
  return [{ name: 'digitiser step', distribution: 'rectangular', standard, unit: 'mV', sensitivity }];
}

function junctionLine(facts: ChannelFacts, sensitivity: number): BudgetInput[] {
  if (facts.junctionHalfWidthCelsius === undefined) return [];
  const ratio = sensitivity * emfSlopeMillivoltsPerCelsius(facts.type, facts.coldJunctionCelsius);
  const standard = rectangularStandard(facts.junctionHalfWidthCelsius);
  return [{ name: 'cold junction', distribution: 'rectangular', standard, unit: '°C', sensitivity: ratio }];
}

function correctionLine(facts: ChannelFacts): BudgetInput[] {
  if (facts.correctionStandardCelsius === undefined) return [];
  return [celsiusLine('correction', 'normal', facts.correctionStandardCelsius)];
}
