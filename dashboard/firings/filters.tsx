import { useEffect, useState } from 'preact/hooks';
import { FiringStatus, FiringVerdict } from '../../hub/contract/firing.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { firingsWords, STATUS_WORDS, VERDICT_WORDS } from '../words/firings.ts';
import type { FiringFilter } from './list.ts';

interface FiltersProps {
  readonly filter: FiringFilter;
  readonly onChange: (filter: FiringFilter) => void;
}

/** Between the last letter and the question: one typed word is one question. */
const PAUSE_MS = 200;

/** Which firings: words, furnace, schedule, verdict, status, days. */
export function Filters({ filter, onChange }: FiltersProps) {
  const { api, feed } = useShell();
  const furnaces = [...(feed.state.value?.furnaces.values() ?? [])];
  const { answer } = useAnswer('schedules', () => api.listSchedules());
  const schedules = answer.state === 'here' ? answer.value : [];
  const named = (every: string, rows: readonly { readonly id: string; readonly name: string }[]) => [
    { value: '', label: every },
    ...rows.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <fieldset class="form-row">
      <legend class="sr-only">{firingsWords.filters}</legend>
      <SearchField value={filter.q} onChange={(q) => onChange({ ...filter, q })} />
      <SelectField
        label={firingsWords.furnace}
        value={filter.furnaceId}
        options={named(firingsWords.everyFurnace, furnaces)}
        onChange={(furnaceId) => onChange({ ...filter, furnaceId })}
      />
      <SelectField
        label={firingsWords.schedule}
        value={filter.scheduleId}
        options={named(firingsWords.everySchedule, schedules)}
        onChange={(scheduleId) => onChange({ ...filter, scheduleId })}
      />
      <SelectField
        label={firingsWords.heads.verdict}
        value={filter.verdict}
        options={[
          { value: '' as const, label: firingsWords.everyVerdict },
          ...FiringVerdict.options.map((value) => ({ value, label: VERDICT_WORDS[value] })),
        ]}
        onChange={(verdict) => onChange({ ...filter, verdict })}
      />
      <SelectField
        label={firingsWords.status}
        value={filter.status}
        options={[
          { value: '' as const, label: firingsWords.everyStatus },
          ...FiringStatus.options.map((value) => ({ value, label: STATUS_WORDS[value] })),
        ]}
        onChange={(status) => onChange({ ...filter, status })}
      />
      <DayField
        label={firingsWords.fromDay}
        value={filter.from}
        onChange={(from) => onChange({ ...filter, from })}
      />
      <DayField label={firingsWords.toDay} value={filter.to} onChange={(to) => onChange({ ...filter, to })} />
    </fieldset>
  );
}

interface EntryProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function SearchField({ value, onChange }: EntryProps) {
  const [text, setText] = useState(value);
  useEffect(() => {
    if (text === value) return undefined;
    const waiting = setTimeout(() => onChange(text), PAUSE_MS);
    return () => clearTimeout(waiting);
  }, [text]);
  return (
    <Field label={firingsWords.search} hint={firingsWords.searchHint}>
      {(ids) => (
        <input
          {...ids}
          type="search"
          maxLength={200}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

function DayField({ label, value, onChange }: EntryProps & { readonly label: string }) {
  return (
    <Field label={label}>
      {(ids) => (
        <input {...ids} type="date" value={value} onInput={(event) => onChange(event.currentTarget.value)} />
      )}
    </Field>
  );
}
