import { REMINDER_CODES } from '../../hub/contract/reminder.ts';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { words } from '../../hub/contract/words/words.ts';
import { CheckField } from '../parts/check-field.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { routesWords } from '../words/bench.ts';
import { pieceWords } from '../words/pieces.ts';
import type { RouteAction, StepForm } from './route-form.ts';
import { STEP_CHOICES, stepKey } from './step-name.ts';

interface StepFieldsProps {
  readonly form: StepForm;
  readonly act: (action: RouteAction) => void;
  readonly schedules: readonly Schedule[];
  readonly fault: (path: string) => string | undefined;
}

/** Which heat, work or check; its words, its schedule, its reminders. */
export function StepFields({ form, act, schedules, fault }: StepFieldsProps) {
  const { key, step } = form;
  const choices = STEP_CHOICES.filter(({ value }) => value.startsWith(`${step.kind}:`));
  return (
    <>
      <div class="form-row">
        <SelectField
          label={routesWords.which}
          value={stepKey(step)}
          options={choices}
          onChange={(choice) => act({ type: 'which', key, which: choice.slice(step.kind.length + 1) })}
        />
        <TextField
          label={routesWords.stepTitle}
          hint={routesWords.stepTitleHint}
          value={step.title}
          maxLength={80}
          onChange={(title) => act({ type: 'texts', key, texts: { title } })}
          error={fault('title')}
        />
        {step.kind === 'heat' && (
          <SelectField
            label={routesWords.schedule}
            value={step.scheduleId ?? ''}
            options={scheduleChoices(schedules, step.scheduleId)}
            onChange={(id) => act({ type: 'schedule', key, scheduleId: id === '' ? null : id })}
            error={fault('scheduleId')}
          />
        )}
      </div>
      <CheckField
        label={routesWords.mayBeSkipped}
        checked={step.optional}
        onChange={(optional) => act({ type: 'texts', key, texts: { optional } })}
      />
      <details>
        <summary>{routesWords.reminders(step.reminders.length)}</summary>
        <p class="aside">{pieceWords.reminderStanding}</p>
        {REMINDER_CODES.map((code) => (
          <CheckField
            key={code}
            label={words('en').reminder[code]}
            checked={step.reminders.includes(code)}
            onChange={(on) => act({ type: 'reminder', key, code, on })}
          />
        ))}
      </details>
    </>
  );
}

/** A schedule that has been put away since stays readable as what it is: chosen. */
function scheduleChoices(schedules: readonly Schedule[], chosen: string | null) {
  const known = schedules.map(({ id, name }) => ({ value: id, label: name }));
  const isGone = chosen !== null && schedules.every(({ id }) => id !== chosen);
  return [
    { value: '', label: routesWords.noSchedule },
    ...known,
    ...(isGone ? [{ value: chosen, label: chosen }] : []),
  ];
}
