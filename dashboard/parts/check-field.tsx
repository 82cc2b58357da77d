import './check-field.css';

interface CheckFieldProps {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}

/** A box to tick, with its words as part of the target. */
export function CheckField({ label, checked, onChange }: CheckFieldProps) {
  return (
    <label class="check-field">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  );
}
