import { Field } from '../parts/field.tsx';

interface UnitFieldProps {
  readonly label: string;
  readonly value: string;
  /** Written behind the input. */
  readonly unit: string;
  readonly onChange: (text: string) => void;
  readonly hint?: string;
  readonly error?: string | undefined;
}

/** A number as text with its unit behind it; what it means is the form's business. */
export function UnitField({ label, value, unit, onChange, hint, error }: UnitFieldProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <span class="field-number">
          <input
            {...ids}
            type="text"
            autocomplete="off"
            inputMode={unit === '' ? 'text' : 'decimal'}
            value={value}
            onInput={(event) => onChange(event.currentTarget.value)}
          />
          {unit !== '' && <span class="field-unit">{unit}</span>}
        </span>
      )}
    </Field>
  );
}
