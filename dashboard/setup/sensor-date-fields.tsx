import { Field } from '../parts/field.tsx';
import { airSetupWords } from '../words/air-setup.ts';
import type { SensorDateTexts } from './sensor-dates.ts';

const FIELDS = ['calibratedAt', 'calibrationDueAt', 'endOfLifeAt'] as const;

interface SensorDateFieldsProps {
  readonly texts: SensorDateTexts;
  readonly set: (change: Partial<SensorDateTexts>) => void;
  readonly fault: (path: string) => string | undefined;
}

/** When a gas sensor was last tried with gas, and when it is due or done. */
export function SensorDateFields({ texts, set, fault }: SensorDateFieldsProps) {
  return (
    <fieldset class="group">
      <legend>{airSetupWords.datesTitle}</legend>
      <p class="aside">{airSetupWords.datesNote}</p>
      <div class="form-row">
        {FIELDS.map((field) => (
          <Field key={field} label={airSetupWords[field]} error={fault(field)}>
            {(ids) => (
              <input
                {...ids}
                type="date"
                value={texts[field]}
                onInput={(event) => set({ [field]: event.currentTarget.value })}
              />
            )}
          </Field>
        ))}
      </div>
    </fieldset>
  );
}
