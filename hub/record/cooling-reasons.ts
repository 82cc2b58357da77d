import { judgeCooling } from '../physics/heat/cooling-rule.ts';
import type { PlanPiece } from '../planning/types.ts';
import { windowFor } from '../planning/windows.ts';
import type { Achieved } from './achieved.ts';
import type { PieceHeat } from './heat.ts';
import { safely } from './safely.ts';
import { doubt, good, type Reason, wrong } from './types.ts';

/** Whether an anneal cooled as slowly as its steel wants, by what it did and not by what was planned. */

/** Below the soak before the rule begins, as the check of a schedule has it, K. */
const BELOW_SOAK = 20;
const USUAL_END_CELSIUS = 540;
const LENIENCE = 1.05;

export interface CoolingFound {
  readonly celsiusPerHour: number | null;
  readonly reasons: readonly Reason[];
}

const NOT_ASKED: CoolingFound = { celsiusPerHour: null, reasons: [] };

export function coolingFound(
  plan: PlanPiece,
  heat: PieceHeat,
  achieved: Achieved,
  corrected: boolean,
): CoolingFound {
  if (plan.step !== 'full-anneal' && plan.step !== 'spheroidise') return NOT_ASKED;
  const limit = windowFor(plan.steel, plan.step)?.maxCoolingCelsiusPerHour;
  const { main, heldCelsius } = achieved;
  if (limit === undefined || main === null || heldCelsius === null) return NOT_ASKED;
  const toCelsius = windowFor(plan.steel, plan.step)?.coolToCelsius ?? USUAL_END_CELSIUS;
  const fall = heat.points.filter(({ atMs }) => atMs >= main.endedAtMs);
  const curve = fall.map(({ atMs, core }) => ({ atSeconds: atMs / 1000, celsius: core.value }));
  const fromCelsius = Math.min(heldCelsius, main.soak.targetCelsius) - BELOW_SOAK;
  const rule = { fromCelsius, toCelsius, mostCelsiusPerHour: limit };
  const params = { limitCelsiusPerHour: limit, toCelsius };
  const verdict = safely(() => judgeCooling(curve, rule));
  if (verdict === null) {
    return { celsiusPerHour: null, reasons: [doubt('cooling-not-followed', params)] };
  }
  const rate = verdict.meanCelsiusPerHour;
  const told = { ...params, measuredCelsiusPerHour: rate, worstCelsiusPerHour: verdict.worstCelsiusPerHour };
  const computed = heat.basis === 'core' && !corrected && fall.some(({ inFurnace }) => !inFurnace);
  return {
    celsiusPerHour: rate,
    reasons: [rateReason(rate, limit, verdict.met, told), ...(computed ? [doubt('cooling-computed')] : [])],
  };
}

function rateReason(rate: number, limit: number, met: boolean, params: Reason['params']): Reason {
  if (rate > 2 * limit) return wrong('cooling-too-fast', params);
  if (rate > LENIENCE * limit || !met) return doubt('cooling-too-fast', params);
  return good('cooling-met', params);
}
