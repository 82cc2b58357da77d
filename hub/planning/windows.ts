import { type RouteHeat, windowStepOf } from '../contract/route-template.ts';
import { percentOf } from '../physics/steel/composition.ts';
import type { StepWindow } from '../physics/steel/grade.ts';
import type { PlanPiece, PlanSteel } from './types.ts';

/** The temperatures that a step allows, for one steel and for a whole load. */

export function windowFor(steel: PlanSteel, step: RouteHeat): StepWindow | null {
  return steel.windows.find((window) => window.step === windowStepOf(step)) ?? null;
}

export interface SharedWindow {
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** Whose window is the narrowest: it speaks for the sources. */
  readonly window: StepWindow;
}

/** What suits every piece at once; null when one has no window or they do not overlap. */
export function sharedWindow(pieces: readonly PlanPiece[], step: RouteHeat): SharedWindow | null {
  const windows = pieces.map(({ steel }) => windowFor(steel, step));
  const known = windows.filter((window) => window !== null);
  const [first] = known;
  if (first === undefined || known.length < windows.length) return null;
  const lowCelsius = Math.max(...known.map((window) => window.lowCelsius));
  const highCelsius = Math.min(...known.map((window) => window.highCelsius));
  if (lowCelsius > highCelsius) return null;
  const window = known.reduce((a, b) => (width(b) < width(a) ? b : a), first);
  return { lowCelsius, highCelsius, window };
}

function width({ lowCelsius, highCelsius }: StepWindow): number {
  return highCelsius - lowCelsius;
}

/** Cr + Mo + V + W, mass percent. */
export function carbideFormers({ composition }: PlanSteel): number {
  return (['Cr', 'Mo', 'V', 'W'] as const).reduce((sum, element) => sum + percentOf(composition, element), 0);
}
