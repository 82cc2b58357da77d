import { STEPS, type StepName } from '../../hub/contract/compute/steels.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { unitNamed } from '../words/format.ts';
import { ownSteelWords } from '../words/setup-steels.ts';
import { STEP_WORDS } from '../words/steel.ts';
import { EMPTY_WINDOW, type WindowTexts } from './steel-form.ts';
import { UnitField } from './unit-field.tsx';

interface WindowFieldsProps {
  readonly windows: readonly WindowTexts[];
  readonly onChange: (windows: readonly WindowTexts[]) => void;
  readonly fault: (path: string) => string | undefined;
  readonly unit: DisplayUnit;
}

/** The steps that a data sheet speaks of, one group each. */
export function WindowFields({ windows, onChange, fault, unit }: WindowFieldsProps) {
  const taken = new Set(windows.map(({ step }) => step));
  const free = STEPS.find((step) => !taken.has(step));
  return (
    <fieldset class="setup-group">
      <legend>{ownSteelWords.windows}</legend>
      <p class="aside">{ownSteelWords.windowsHint}</p>
      {fault('windows') && <p class="field-error">{fault('windows')}</p>}
      {windows.map((window, i) => (
        <WindowGroup
          // The order is the person's own and nothing else names a row.
          key={i}
          index={i}
          window={window}
          unit={unit}
          fault={fault}
          onChange={(next) => onChange(windows.map((each, at) => (at === i ? next : each)))}
          onRemove={() => onChange(windows.filter((_, at) => at !== i))}
        />
      ))}
      {free && (
        <div class="form-acts">
          <Button onPress={() => onChange([...windows, { ...EMPTY_WINDOW, step: free }])}>
            {ownSteelWords.addWindow}
          </Button>
        </div>
      )}
    </fieldset>
  );
}

interface WindowGroupProps {
  readonly index: number;
  readonly window: WindowTexts;
  readonly unit: DisplayUnit;
  readonly fault: (path: string) => string | undefined;
  readonly onChange: (window: WindowTexts) => void;
  readonly onRemove: () => void;
}

function WindowGroup({ index, window, unit, fault, onChange, onRemove }: WindowGroupProps) {
  const { label } = unitNamed(unit);
  const at = (field: string) => fault(`windows.${index}.${field}`);
  const set = (change: Partial<WindowTexts>) => onChange({ ...window, ...change });
  return (
    <fieldset class="setup-group">
      <legend>{ownSteelWords.windowTitle(index + 1)}</legend>
      <SelectField<StepName>
        label={ownSteelWords.step}
        value={window.step}
        options={STEPS.map((value) => ({ value, label: STEP_WORDS[value] }))}
        onChange={(step) => set({ step })}
      />
      <div class="form-row">
        <UnitField
          label={ownSteelWords.low}
          unit={label}
          value={window.low}
          onChange={(low) => set({ low })}
          error={at('lowCelsius')}
        />
        <UnitField
          label={ownSteelWords.high}
          unit={label}
          value={window.high}
          onChange={(high) => set({ high })}
          error={at('highCelsius')}
        />
      </div>
      <TextField
        label={ownSteelWords.from}
        hint={ownSteelWords.fromHint}
        value={window.from}
        onChange={(from) => set({ from })}
        maxLength={200}
        error={at('from')}
      />
      <div class="form-row">
        <UnitField
          label={ownSteelWords.cooling}
          unit={`${label}/h`}
          value={window.rate}
          onChange={(rate) => set({ rate })}
          error={at('maxCoolingCelsiusPerHour')}
        />
        <UnitField
          label={ownSteelWords.coolTo}
          unit={label}
          value={window.coolTo}
          onChange={(coolTo) => set({ coolTo })}
          error={at('coolToCelsius')}
        />
      </div>
      <div class="form-acts">
        <Button name={ownSteelWords.removeWindow(index + 1)} onPress={onRemove}>
          {ownSteelWords.remove}
        </Button>
      </div>
    </fieldset>
  );
}
