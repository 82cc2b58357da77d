import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  /** What is wrong with what was entered; shown and announced with the input. */
  readonly error?: string | undefined;
  /** Draws the input, with the ids that tie it to label, hint and error. */
  readonly children: (ids: InputIds) => ComponentChildren;
}

export interface InputIds {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': boolean;
}

/** A label, an input, a hint and an error that belong together for every kind of reader. */
export function Field({ label, hint, error, children }: FieldProps) {
  const id = useId();
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter((part) => part !== '');
  return (
    <div class={error ? 'field field-wrong' : 'field'}>
      <label for={id}>{label}</label>
      {children({
        id,
        'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
        'aria-invalid': error !== undefined,
      })}
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {error && (
        <p class="field-error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly maxLength?: number;
  /** More than one row makes a text area. */
  readonly rows?: number;
}

export function TextField(props: TextFieldProps) {
  const change = (event: { currentTarget: { value: string } }) => props.onChange(event.currentTarget.value);
  return (
    <Field label={props.label} hint={props.hint} error={props.error}>
      {(ids) =>
        (props.rows ?? 1) > 1 ? (
          <textarea
            {...ids}
            rows={props.rows}
            maxLength={props.maxLength}
            value={props.value}
            onInput={change}
          />
        ) : (
          <input {...ids} type="text" maxLength={props.maxLength} value={props.value} onInput={change} />
        )
      }
    </Field>
  );
}

export interface SelectFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
}

export function SelectField<T extends string>(props: SelectFieldProps<T>) {
  const change = (text: string) => {
    const option = props.options.find((candidate) => candidate.value === text);
    if (option) props.onChange(option.value);
  };
  return (
    <Field label={props.label} hint={props.hint} error={props.error}>
      {(ids) => (
        <select {...ids} value={props.value} onChange={(event) => change(event.currentTarget.value)}>
          {props.options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
