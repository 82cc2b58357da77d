import type { RouteStep, RouteStepDraft } from '../../hub/contract/piece.ts';
import type { ReminderCode } from '../../hub/contract/reminder.ts';
import { RouteCheck, RouteHeat, RouteWork, type TemplateStep } from '../../hub/contract/route-template.ts';

/** The steps of a route while a person arranges them. A pure reducer. */

export interface StepForm {
  /** Stays with the step when it moves, so that its fields keep their focus. */
  readonly key: number;
  /** Of a step that a piece has already; null: new, or of a template. */
  readonly id: string | null;
  readonly isDone: boolean;
  /** Added while the form is open: its fields lie open. */
  readonly isNew: boolean;
  readonly step: TemplateStep;
}

export interface RouteForm {
  readonly steps: readonly StepForm[];
  readonly nextKey: number;
}

export type StepKind = TemplateStep['kind'];
export type StepTexts = Partial<Pick<TemplateStep, 'title' | 'note' | 'optional'>>;

export type RouteAction =
  | { readonly type: 'add'; readonly kind: StepKind }
  | { readonly type: 'remove'; readonly key: number }
  | { readonly type: 'move'; readonly key: number; readonly by: -1 | 1 }
  | { readonly type: 'which'; readonly key: number; readonly which: string }
  | { readonly type: 'texts'; readonly key: number; readonly texts: StepTexts }
  | { readonly type: 'schedule'; readonly key: number; readonly scheduleId: string | null }
  | { readonly type: 'reminder'; readonly key: number; readonly code: ReminderCode; readonly on: boolean };

export function templateForm(steps: readonly TemplateStep[]): RouteForm {
  return formOf(steps.map((step) => ({ id: null, isDone: false, isNew: false, step })));
}

export function pieceRouteForm(route: readonly RouteStep[]): RouteForm {
  return formOf(
    route.map(({ id, done, ...step }) => ({
      id,
      isDone: done !== null,
      isNew: false,
      step: step as TemplateStep,
    })),
  );
}

function formOf(steps: readonly Omit<StepForm, 'key'>[]): RouteForm {
  return { steps: steps.map((step, index) => ({ ...step, key: index + 1 })), nextKey: steps.length + 1 };
}

/** The steps as a piece takes them: those that were there keep their id, and so their tick. */
export function routeDraft({ steps }: RouteForm): RouteStepDraft[] {
  return steps.map(({ id, step }) => (id === null ? step : { ...step, id }));
}

export function reduceRoute(form: RouteForm, action: RouteAction): RouteForm {
  switch (action.type) {
    case 'add': {
      const added = { key: form.nextKey, id: null, isDone: false, isNew: true, step: blankStep(action.kind) };
      return { steps: [...form.steps, added], nextKey: form.nextKey + 1 };
    }
    case 'remove':
      return { ...form, steps: form.steps.filter(({ key }) => key !== action.key) };
    case 'move':
      return { ...form, steps: moved(form.steps, action.key, action.by) };
    case 'which':
      return changed(form, action.key, (step) => withWhich(step, action.which));
    case 'texts':
      return changed(form, action.key, (step) => ({ ...step, ...action.texts }));
    case 'schedule':
      return changed(form, action.key, (step) =>
        step.kind === 'heat' ? { ...step, scheduleId: action.scheduleId } : step,
      );
    case 'reminder':
      return changed(form, action.key, (step) => withReminder(step, action.code, action.on));
    default:
      return action satisfies never;
  }
}

function blankStep(kind: StepKind): TemplateStep {
  const common = { title: '', note: '', optional: false, reminders: [] };
  switch (kind) {
    case 'heat':
      return { kind, step: 'normalise', scheduleId: null, ...common };
    case 'work':
      return { kind, work: 'shape', ...common };
    case 'check':
      return { kind, check: 'hardness', ...common };
    default:
      return kind satisfies never;
  }
}

/** Another heat, work or check of the same kind; a name that its kind does not know changes nothing. */
function withWhich(step: TemplateStep, which: string): TemplateStep {
  switch (step.kind) {
    case 'heat': {
      const heat = RouteHeat.safeParse(which);
      // A schedule belongs to the heat that it was chosen for.
      return heat.success ? { ...step, step: heat.data, scheduleId: null } : step;
    }
    case 'work': {
      const work = RouteWork.safeParse(which);
      return work.success ? { ...step, work: work.data } : step;
    }
    case 'check': {
      const check = RouteCheck.safeParse(which);
      return check.success ? { ...step, check: check.data } : step;
    }
    default:
      return step satisfies never;
  }
}

function withReminder(step: TemplateStep, code: ReminderCode, on: boolean): TemplateStep {
  const others = step.reminders.filter((each) => each !== code);
  return { ...step, reminders: on ? [...others, code] : others };
}

function changed(form: RouteForm, key: number, change: (step: TemplateStep) => TemplateStep): RouteForm {
  const steps = form.steps.map((each) => (each.key === key ? { ...each, step: change(each.step) } : each));
  return { ...form, steps };
}

/** At the ends nothing moves. */
function moved(steps: readonly StepForm[], key: number, by: -1 | 1): readonly StepForm[] {
  const from = steps.findIndex((each) => each.key === key);
  const [one, other] = [steps[from], steps[from + by]];
  if (!one || !other) return steps;
  return steps.map((each, index) => {
    if (index === from) return other;
    return index === from + by ? one : each;
  });
}
