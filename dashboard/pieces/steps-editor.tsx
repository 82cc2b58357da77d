import { useRef, useState } from 'preact/hooks';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { Button } from '../parts/button.tsx';
import { routesWords } from '../words/bench.ts';
import type { RouteAction, RouteForm, StepForm, StepKind } from './route-form.ts';
import { StepFields } from './step-fields.tsx';
import { stepName } from './step-name.ts';

interface StepsEditorProps {
  readonly form: RouteForm;
  readonly act: (action: RouteAction) => void;
  readonly schedules: readonly Schedule[];
  /** What is wrong with a step, by its place and the path inside it. */
  readonly fault: (path: string) => string | undefined;
}

/** The steps of a route in their order: each with its fields, and buttons to move, remove and add. */
export function StepsEditor({ form, act, schedules, fault }: StepsEditorProps) {
  const head = useRef<HTMLHeadingElement>(null);
  const [said, setSaid] = useState('');
  const add = (kind: StepKind) => {
    act({ type: 'add', kind });
    setSaid(routesWords.added(form.steps.length + 1));
  };
  const remove = (index: number, key: number) => {
    act({ type: 'remove', key });
    setSaid(routesWords.removed(index));
    // The pressed button is gone with its step: the focus must not fall to the top of the page.
    head.current?.focus();
  };
  return (
    <section class="route-steps" aria-labelledby="route-steps-head">
      <h2 id="route-steps-head" ref={head} tabIndex={-1}>
        {routesWords.steps}
      </h2>
      {fault('') && <p class="field-error">{fault('')}</p>}
      <ol class="plain-list route-step-list">
        {form.steps.map((each, index) => (
          <li key={each.key}>
            <StepPart
              form={each}
              index={index}
              last={form.steps.length - 1}
              act={act}
              tell={setSaid}
              schedules={schedules}
              fault={(path) => fault(`${index}/${path}`)}
              onRemove={() => remove(index, each.key)}
            />
          </li>
        ))}
      </ol>
      <p class="sr-only" role="status">
        {said}
      </p>
      <div class="form-acts">
        <Button onPress={() => add('heat')}>{routesWords.addHeat}</Button>
        <Button onPress={() => add('work')}>{routesWords.addWork}</Button>
        <Button onPress={() => add('check')}>{routesWords.addCheck}</Button>
      </div>
    </section>
  );
}

interface StepPartProps extends ActsProps {
  readonly schedules: readonly Schedule[];
  readonly fault: (path: string) => string | undefined;
}

/** One step: its fields folded away until somebody wants them, so that a long route stays short. */
function StepPart({ schedules, fault, ...props }: StepPartProps) {
  const { form, index, act } = props;
  const isWrong = fault('title') !== undefined || fault('scheduleId') !== undefined;
  return (
    <div class="route-step">
      <details open={form.isNew || isWrong}>
        <summary>
          <span>
            {index + 1}. {stepName(form.step)}
            {form.step.optional && <span class="tag">{routesWords.mayBeSkipped.toLowerCase()}</span>}
            {form.isDone && <span class="tag">{routesWords.ticked}</span>}
          </span>
        </summary>
        <StepFields form={form} act={act} schedules={schedules} fault={fault} />
      </details>
      <StepActs {...props} />
    </div>
  );
}

interface ActsProps {
  readonly form: StepForm;
  readonly index: number;
  readonly last: number;
  readonly act: (action: RouteAction) => void;
  /** Says to people who do not see it what a press has done. */
  readonly tell: (words: string) => void;
  readonly onRemove: () => void;
}

function StepActs({ form, index, last, act, tell, onRemove }: ActsProps) {
  const move = (by: -1 | 1) => {
    act({ type: 'move', key: form.key, by });
    tell(routesWords.moved(index + by));
  };
  return (
    <div class="form-acts">
      <Button name={routesWords.earlierName(index)} disabled={index === 0} onPress={() => move(-1)}>
        {routesWords.earlier}
      </Button>
      <Button name={routesWords.laterName(index)} disabled={index === last} onPress={() => move(1)}>
        {routesWords.later}
      </Button>
      <Button name={routesWords.takeName(index)} onPress={onRemove}>
        {routesWords.take}
      </Button>
    </div>
  );
}
