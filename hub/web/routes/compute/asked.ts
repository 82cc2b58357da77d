import type { SteelAsked } from '../../../contract/compute/steel-choice.ts';
import type { Steel } from '../../../physics/steel/own-steel.ts';
import type { TemperHistory } from '../../../physics/steel/temper-history.ts';
import { type CurvePoint, heldAt } from '../../../physics/time-at-temperature/curve.ts';
import { requireModestCurve } from './bounds.ts';
import type { Frozen } from './computation.ts';

/** The steel and the heat that a question names. */

export function steelAsked(steel: Steel): Frozen<SteelAsked> {
  const { id, title, composition, flags } = steel;
  return { id: id === '' ? null : id, title, composition: { ...composition }, flags };
}

interface HeatQuestion {
  readonly celsius?: number | undefined;
  readonly hours?: number | undefined;
  readonly curve?: readonly CurvePoint[] | undefined;
}

/** A hold as the physics of time at temperature takes it: a curve of two points. Refuses no or negative time. */
export function curveOf({ celsius, hours, curve }: HeatQuestion): readonly CurvePoint[] {
  if (curve !== undefined) return requireModestCurve(curve);
  return heldAt(celsius ?? Number.NaN, (hours ?? Number.NaN) * 3600);
}

/** A hold is asked as two points far apart: that is no gap that anybody failed to measure. */
export function measuredCautions<Caution extends string>(
  { curve }: HeatQuestion,
  cautions: readonly Caution[],
): readonly Caution[] {
  return curve === undefined ? cautions.filter((caution) => caution !== 'long-gap') : cautions;
}

export function temperOf({ celsius, hours, curve }: HeatQuestion): TemperHistory {
  if (curve !== undefined) return { kind: 'curve', readings: requireModestCurve(curve) };
  return { kind: 'hold', celsius: celsius ?? Number.NaN, hours: hours ?? Number.NaN };
}
