/** The user's own steels: a mill certificate, checked against the grade it claims to be. */
import { type Composition, type Outside, outsideOf, requireComposition } from './composition.ts';
import { derivedWindows, windowsOf } from './derived-windows.ts';
import { type Flag, flag } from './estimate.ts';
import { describeOutside } from './formula.ts';
import type { Grade, StepWindow } from './grade.ts';
import type { TemperSet } from './temper-set.ts';

/** A steel as the rest of the house uses it: the composition to compute with and what is recommended. */
export interface Steel {
  readonly id: string;
  readonly title: string;
  readonly composition: Composition;
  readonly windows: readonly StepWindow[];
  readonly measured: readonly TemperSet[];
  readonly flags: readonly Flag[];
}

/** A catalogue grade at its nominal composition. */
export function steelOfGrade(grade: Grade): Steel {
  return {
    id: grade.id,
    title: grade.names[0]?.name ?? grade.id,
    composition: grade.nominal,
    windows: windowsOf(grade),
    measured: grade.temperSets,
    flags: [],
  };
}

/** Elements of a certificate outside the grade's limits; an element it does not name is not judged. */
export function outsideLimits(grade: Grade, certificate: Composition): readonly Outside[] {
  return outsideOf(certificate, grade.limits).filter((item) => certificate[item.element] !== undefined);
}

/** @see ownSteel */
export interface OwnSteelInput {
  readonly id: string;
  readonly title: string;
  /** Mass percent, as on the certificate. */
  readonly composition: Readonly<Record<string, number>>;
  /** The grade it was sold as, if any. */
  readonly grade?: Grade;
  /** Windows that its maker states: each takes the place of the computed one of its step. */
  readonly windows?: readonly StepWindow[];
}

/**
 * A steel of the user's own. Computed from its certificate throughout; the
 * grade's windows and measured tempering curves are taken over only when the
 * certificate lies inside the grade's limits (flag `outside-grade-limits` when not).
 *
 * @throws PhysicsError `bad-input`, `out-of-range` for the composition
 */
export function ownSteel(input: OwnSteelInput): Steel {
  const composition = requireComposition(input.composition);
  const own = { id: input.id, title: input.title, composition };
  const { grade } = input;
  if (grade === undefined) {
    const windows = statedFirst(input.windows ?? [], derivedWindows(composition));
    return { ...own, windows, measured: [], flags: [] };
  }
  const outside = outsideLimits(grade, composition);
  if (outside.length === 0)
    return { ...own, windows: windowsOf(grade), measured: grade.temperSets, flags: [] };
  const message = `Not ${grade.id} by its limits: ${describeOutside(outside)}. Windows are computed instead.`;
  return {
    ...own,
    windows: derivedWindows(composition),
    measured: [],
    flags: [flag('outside-grade-limits', message)],
  };
}

function statedFirst(stated: readonly StepWindow[], derived: readonly StepWindow[]): readonly StepWindow[] {
  const steps = new Set(stated.map(({ step }) => step));
  return [...stated, ...derived.filter(({ step }) => !steps.has(step))];
}
