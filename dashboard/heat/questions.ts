import type { z } from 'zod';
import type { ConductionQuestion } from '../../hub/contract/compute/conduction.ts';
import type { BuriedBarQuestion, CoolingQuestion } from '../../hub/contract/compute/cooling.ts';
import type { SoakTimeQuestion } from '../../hub/contract/compute/soak-time.ts';
import type { CoolPlan, HeatPlan, Packing } from './form.ts';
import type { Heating } from './furnace.ts';

/** The page's plans as questions to the hub. Pure. */

/** Shares of the section that are asked beside it: what thinner and thicker would do. */
export const OTHER_SECTIONS = [0.5, 0.75, 1.5, 2] as const;

/** Points of each curve. */
const POINTS = 200;

/** The range of sections that the hub answers, mm; others are not asked. */
const LEAST_MM = 0.2;
const MOST_MM = 1000;

export function otherThicknesses(thicknessMm: number): number[] {
  return OTHER_SECTIONS.map((share) => share * thicknessMm).filter((mm) => mm >= LEAST_MM && mm <= MOST_MM);
}

/** The chamber as a curve; undefined while it stands at its heat, and when there is nothing to climb. */
export function chamberCurve(plan: HeatPlan): { atSeconds: number; celsius: number }[] | undefined {
  const { startCelsius, chamberCelsius, climbCelsiusPerHour } = plan;
  if (climbCelsiusPerHour === null || chamberCelsius <= startCelsius) return undefined;
  const atSeconds = ((chamberCelsius - startCelsius) / climbCelsiusPerHour) * 3600;
  return [
    { atSeconds: 0, celsius: startCelsius },
    { atSeconds, celsius: chamberCelsius },
  ];
}

/** Temperature of the chamber at a time, °C. */
export function chamberAt(plan: HeatPlan, seconds: number): number {
  const [start, end] = chamberCurve(plan) ?? [];
  if (start === undefined || end === undefined || seconds >= end.atSeconds) return plan.chamberCelsius;
  return start.celsius + ((end.celsius - start.celsius) * seconds) / end.atSeconds;
}

function exposed(plan: HeatPlan, heating: Heating) {
  const surroundingsCurve = chamberCurve(plan);
  return {
    shape: plan.shape,
    initialCelsius: plan.startCelsius,
    surroundingsCelsius: plan.chamberCelsius,
    ...(surroundingsCurve ? { surroundingsCurve } : {}),
    ...heating,
    targetCelsius: plan.targetCelsius,
    toleranceCelsius: plan.toleranceCelsius,
  };
}

/** @param seconds length of the curves; left out: as the hub sees fit */
export function conductionQuestion(
  plan: HeatPlan,
  heating: Heating,
  seconds?: number,
): z.input<typeof ConductionQuestion> {
  const { thicknessMm } = plan;
  return { ...exposed(plan, heating), thicknessMm, points: POINTS, ...(seconds ? { seconds } : {}) };
}

/**
 * What is asked to learn the arrival of these sections: one question while the furnace stands at its heat. A
 * furnace that climbs is followed minute by minute, which is too much for one answer: then one question a section.
 */
export function soakQuestions(
  plan: HeatPlan,
  heating: Heating,
  thicknesses: readonly number[],
): z.input<typeof SoakTimeQuestion>[] {
  const { holdSeconds } = plan;
  const base = { ...exposed(plan, heating), holdSeconds };
  if (chamberCurve(plan) !== undefined) return thicknesses.map((thicknessMm) => ({ ...base, thicknessMm }));
  const [thicknessMm, ...alsoThicknessMm] = thicknesses;
  return thicknessMm === undefined ? [] : [{ ...base, thicknessMm, alsoThicknessMm }];
}

/** Ways to cool, from fast to slow. */
export const COOLINGS = [
  'still-water',
  'still-oil',
  'still-air',
  'vermiculite',
  'ash',
  'closed-furnace',
] as const;
export type Cooling = (typeof COOLINGS)[number];

export function isPacking(cooling: Cooling): cooling is Packing {
  return cooling === 'ash' || cooling === 'vermiculite';
}

/** Where the rate is read when no rule says better: in the range of the pearlite of an anneal. */
const RATE_AT_CELSIUS = 700;

export function coolingQuestion(
  plan: CoolPlan,
  medium: Exclude<Cooling, Packing>,
): z.input<typeof CoolingQuestion> {
  const { shape, thicknessMm, fromCelsius: initialCelsius, rule } = plan;
  return { shape, thicknessMm, initialCelsius, medium, rule, rateAtCelsius: RATE_AT_CELSIUS, points: POINTS };
}

/** A round bar has the area of a flat one as wide as its diameter and π/4 as thick. */
export function buriedQuestion(
  plan: CoolPlan,
  packing: Packing,
  hotCompanionKilogramsPerMetre = 0,
): z.input<typeof BuriedBarQuestion> {
  const round = plan.shape === 'plate' ? 1 : Math.PI / 4;
  return {
    widthMm: plan.widthMm,
    thicknessMm: plan.thicknessMm * round,
    packing,
    canRadiusMm: plan.canRadiusMm,
    initialCelsius: plan.fromCelsius,
    hotCompanionKilogramsPerMetre,
    rule: plan.rule,
    rateAtCelsius: RATE_AT_CELSIUS,
    points: POINTS,
  };
}
