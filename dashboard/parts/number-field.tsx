import { useEffect, useState } from 'preact/hooks';
import { Field } from './field.tsx';
import {
  type Entry,
  type NumberRule,
  readAmount,
  readDuration,
  writeAmount,
  writeDuration,
} from './number-entry.ts';

interface EntryFieldProps<T> {
  readonly label: string;
  readonly value: T;
  readonly onChange: (value: T) => void;
  readonly hint?: string | undefined;
  /** An error from elsewhere (the hub); what the field itself finds wrong is shown first. */
  readonly error?: string | undefined;
  /** Called with whether the text can be read, so that a form can refuse to send. */
  readonly onValid?: (valid: boolean) => void;
}

export interface NumberFieldProps extends EntryFieldProps<number | null> {
  /** Unit that the person sees and types; `value` and `onChange` speak base units (°C, Pa, kg, ppm). */
  readonly rule: NumberRule;
  /** Written after the unit: "/h" for a rate. */
  readonly per?: string;
}

/** A number in the unit that the person sees, kept in base units. */
export function NumberField({ rule, per = '', ...props }: NumberFieldProps) {
  return (
    <EntryField
      {...props}
      suffix={`${rule.unit.label}${per}`}
      inputMode="decimal"
      read={(text) => readAmount(text, rule)}
      write={(value) => writeAmount(value, rule)}
      formKey={rule.unit.code}
    />
  );
}

/** A duration in words ("1 h 30 min", "1:30"), kept in seconds. */
export function DurationField(props: EntryFieldProps<number>) {
  return (
    <EntryField
      {...props}
      suffix=""
      inputMode="text"
      read={readDuration}
      write={writeDuration}
      formKey="duration"
    />
  );
}

interface FormProps<T> extends EntryFieldProps<T> {
  readonly suffix: string;
  readonly inputMode: 'decimal' | 'text';
  readonly read: (text: string) => Entry<T>;
  readonly write: (value: T) => string;
  /** Changes when the same value must be written anew (another unit was chosen). */
  readonly formKey: string;
}

function EntryField<T extends number | null>(props: FormProps<T>) {
  const { value, read, write, formKey } = props;
  const [text, setText] = useState(write(value));
  const entry = read(text);
  // The text is the person's while it means the value; it is rewritten only when the value came from elsewhere.
  useEffect(() => {
    const current = read(text);
    if (!current.ok || current.value !== value) setText(write(value));
  }, [value, formKey]);

  const change = (next: string) => {
    setText(next);
    const answer = read(next);
    props.onValid?.(answer.ok);
    if (answer.ok) props.onChange(answer.value);
  };
  return (
    <Field label={props.label} hint={props.hint} error={entry.ok ? props.error : entry.message}>
      {(ids) => (
        <span class="field-number">
          <input
            {...ids}
            type="text"
            autocomplete="off"
            inputMode={props.inputMode}
            value={text}
            onInput={(event) => change(event.currentTarget.value)}
          />
          {props.suffix !== '' && <span class="field-unit">{props.suffix}</span>}
        </span>
      )}
    </Field>
  );
}
