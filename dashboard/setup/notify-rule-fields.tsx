import { SelectField, TextField } from '../parts/field.tsx';
import { notifyWords } from '../words/notify.ts';
import type { WayTexts, Which } from './notify-way-form.ts';
import { UnitField } from './unit-field.tsx';

interface RuleFieldsProps {
  readonly texts: WayTexts;
  readonly set: (change: Partial<WayTexts>) => void;
  readonly fault: (path: string) => string | undefined;
}

const WEEK = [1, 2, 3, 4, 5, 6, 7];
const YES_NO = [
  { value: 'yes', label: notifyWords.yes },
  { value: 'no', label: notifyWords.no },
] as const;

/** Which alarms, at which hours, after how long, how often. */
export function RuleFields({ texts, set, fault }: RuleFieldsProps) {
  return (
    <fieldset class="setup-group">
      <legend>{notifyWords.rule}</legend>
      <SelectField<Which>
        label={notifyWords.priorities}
        value={texts.which}
        options={(['danger', 'danger+warning', 'warning'] as const).map((value) => ({
          value,
          label: notifyWords.priorityOptions[value],
        }))}
        onChange={(which) => set({ which })}
      />
      <div class="form-row">
        <UnitField
          label={notifyWords.after}
          hint={notifyWords.afterHint}
          value={texts.after}
          unit={notifyWords.minutes}
          onChange={(after) => set({ after })}
          error={fault('rule.afterMinutes')}
        />
        <UnitField
          label={notifyWords.repeat}
          hint={notifyWords.repeatHint}
          value={texts.repeat}
          unit={notifyWords.minutes}
          onChange={(repeat) => set({ repeat })}
          error={fault('rule.repeatMinutes')}
        />
      </div>
      <SelectField<WayTexts['hours']>
        label={notifyWords.hours}
        value={texts.hours}
        options={(['any', 'some'] as const).map((value) => ({
          value,
          label: notifyWords.hoursOptions[value],
        }))}
        onChange={(hours) => set({ hours })}
      />
      {texts.hours === 'some' && <HourFields texts={texts} set={set} fault={fault} />}
      <SelectField<WayTexts['enabled']>
        label={notifyWords.enabled}
        value={texts.enabled}
        options={YES_NO}
        onChange={(enabled) => set({ enabled })}
      />
    </fieldset>
  );
}

function HourFields({ texts, set, fault }: RuleFieldsProps) {
  const toggle = (day: number, on: boolean) =>
    set({ days: WEEK.filter((each) => (each === day ? on : texts.days.includes(each))) });
  return (
    <>
      <fieldset class="notify-days">
        <legend>{notifyWords.days}</legend>
        {WEEK.map((day) => (
          <label key={day}>
            <input
              type="checkbox"
              checked={texts.days.includes(day)}
              onChange={(event) => toggle(day, event.currentTarget.checked)}
            />
            {notifyWords.dayName(day)}
          </label>
        ))}
        {fault('rule.hours.days') && <p class="field-error">{fault('rule.hours.days')}</p>}
      </fieldset>
      <p class="aside">{notifyWords.hoursHint}</p>
      <div class="form-row">
        <TextField
          label={notifyWords.hoursFrom}
          value={texts.hoursFrom}
          onChange={(hoursFrom) => set({ hoursFrom })}
          error={fault('rule.hours.from')}
        />
        <TextField
          label={notifyWords.hoursTo}
          value={texts.hoursTo}
          onChange={(hoursTo) => set({ hoursTo })}
          error={fault('rule.hours.to')}
        />
      </div>
      <SelectField<WayTexts['dangerAnyHour']>
        label={notifyWords.dangerAnyHour}
        value={texts.dangerAnyHour}
        options={YES_NO}
        onChange={(dangerAnyHour) => set({ dangerAnyHour })}
      />
    </>
  );
}
