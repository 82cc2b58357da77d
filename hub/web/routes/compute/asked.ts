import type { Composition as Percents, SteelAsked } from '../../../contract/compute/steel-choice.ts';
import { findGrade, GRADES } from '../../../physics/steel/catalogue.ts';
import { type Composition, requireComposition } from '../../../physics/steel/composition.ts';
import type { Grade } from '../../../physics/steel/grade.ts';
import { ownSteel, type Steel, steelOfGrade } from '../../../physics/steel/own-steel.ts';
import type { TemperHistory } from '../../../physics/steel/temper-history.ts';
import { type CurvePoint, heldAt } from '../../../physics/time-at-temperature/curve.ts';
import { WatchError } from '../../../watch/errors.ts';
import { requireModestCurve } from './bounds.ts';
import type { Frozen } from './computation.ts';

/** The steel and the heat that a question names. */

interface SteelQuestion {
  readonly steel?: string | undefined;
  readonly composition?: Percents | undefined;
}

/**
 * The steel of a question: a grade at its nominal composition, a composition, or a certificate of a grade.
 *
 * @throws WatchError `bad-input` for a grade that is not in the catalogue; PhysicsError for the composition
 */
export function steelOf(question: SteelQuestion): Steel {
  const grade = question.steel === undefined ? null : needGrade(question.steel);
  if (question.composition === undefined) {
    if (grade === null) throw new WatchError('bad-input', 'name a steel or give its composition');
    return steelOfGrade(grade);
  }
  const composition = compositionOf(question.composition);
  const title = grade === null ? 'By composition' : `${grade.id}, by its certificate`;
  return ownSteel({ id: grade?.id ?? '', title, composition, ...(grade === null ? {} : { grade }) });
}

export function needGrade(name: string): Grade {
  const grade = findGrade(name);
  if (grade !== null) return grade;
  const known = GRADES.map((each) => each.id).join(', ');
  throw new WatchError('bad-input', `there is no grade ${name} in the catalogue; it holds ${known}`);
}

/** Drops what a composition does not name, so that the physics' exact optional fields stay exact. */
function compositionOf(percents: Percents): Composition {
  return requireComposition(percents);
}

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
