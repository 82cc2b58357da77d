import type { CoolingReadOff, CoolingRule } from '../../../contract/compute/cooling.ts';
import { type CoolingPoint, coolingTime85 } from '../../../physics/heat/cooling.ts';
import { coolingRateAt, judgeCooling } from '../../../physics/heat/cooling-rule.ts';
import type { HeatPoint } from '../../../physics/heat/heat-curve.ts';
import { orReason } from './answers.ts';

/** What is read off a falling curve: t8/5, the rate at a temperature, the rule of an anneal. */

export interface ReadOffQuestion {
  readonly rateAtCelsius: number;
  readonly rule?: CoolingRule | undefined;
}

export function coreOf(points: readonly HeatPoint[]): CoolingPoint[] {
  return points.map(({ atSeconds, coreCelsius }) => ({ atSeconds, celsius: coreCelsius }));
}

export function readOff(curve: readonly CoolingPoint[], question: ReadOffQuestion): CoolingReadOff {
  const { rateAtCelsius, rule } = question;
  const t85 = orReason(() => coolingTime85(curve));
  const rate = orReason(() => coolingRateAt(curve, rateAtCelsius));
  const verdict = rule === undefined ? null : orReason(() => judgeCooling(curve, rule));
  return {
    t85Seconds: t85.value,
    rateCelsiusPerHour: rate.value,
    rule: verdict?.value ?? null,
    // The rule was asked for by name, so what stands in its way comes first.
    reason: verdict?.reason ?? rate.reason ?? t85.reason,
  };
}
