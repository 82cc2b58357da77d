import type { Piece, RouteStep } from '../../hub/contract/piece.ts';
import type { TemplateStep } from '../../hub/contract/route-template.ts';
import { CHECK_WORDS, HEAT_WORDS, WORK_WORDS } from '../words/pieces.ts';

/** What a step of a route is called, and which one is due. Pure. */

type AnyStep = TemplateStep | RouteStep;

/** What the step is, whatever the shop calls it. */
export function stepKindName(step: AnyStep): string {
  switch (step.kind) {
    case 'heat':
      return HEAT_WORDS[step.step];
    case 'work':
      return WORK_WORDS[step.work];
    case 'check':
      return CHECK_WORDS[step.check];
    default:
      return step satisfies never;
  }
}

/** In the words of the shop where it has its own, else the name of what it is. */
export function stepName(step: AnyStep): string {
  return step.title === '' ? stepKindName(step) : step.title;
}

/** Kind and what it is in one, to filter by: "heat:temper". */
export function stepKey(step: AnyStep): string {
  switch (step.kind) {
    case 'heat':
      return `heat:${step.step}`;
    case 'work':
      return `work:${step.work}`;
    case 'check':
      return `check:${step.check}`;
    default:
      return step satisfies never;
  }
}

/** Every key that a step may have, with its name, in the order of a route. */
export const STEP_CHOICES: readonly { readonly value: string; readonly label: string }[] = [
  ...choices('heat', HEAT_WORDS),
  ...choices('work', WORK_WORDS),
  ...choices('check', CHECK_WORDS),
];

function choices(kind: string, names: Readonly<Record<string, string>>) {
  return Object.entries(names).map(([name, label]) => ({ value: `${kind}:${name}`, label }));
}

/** The first step that is not done; null: none is left. */
export function dueStep({ route }: Pick<Piece, 'route'>): RouteStep | null {
  return route.find(({ done }) => done === null) ?? null;
}
