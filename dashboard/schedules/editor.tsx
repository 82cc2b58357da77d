import { useMemo, useReducer, useState } from 'preact/hooks';
import type { DisplayUnit, Schedule, ScheduleDraft } from '../../hub/contract/schedule.ts';
import { PlanPreview } from '../charts/plan-preview.tsx';
import { Button, LinkButton } from '../parts/button.tsx';
import { FaultSummary } from '../parts/fault-summary.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { hrefTo, navigate } from '../router.ts';
import { useShell } from '../shell.ts';
import { temperature } from '../words/format.ts';
import { editorWords } from '../words/schedules.ts';
import { Basis } from './basis.tsx';
import { checkForm, ratingWarnings } from './check.ts';
import { type FormAction, reduceForm, type ScheduleForm } from './form.ts';
import { SegmentList } from './segment-list.tsx';
import { faultLines, shownFaults } from './shown-faults.ts';

interface EditorProps {
  readonly start: ScheduleForm;
  /** The stored schedule that is changed; null writes a new one. */
  readonly stored: Schedule | null;
}

/** Writes a schedule by hand, with its curve and its faults beside it. */
export function Editor({ start, stored }: EditorProps) {
  const { api } = useShell();
  const [form, act] = useReducer(reduceForm, start);
  const [tried, setTried] = useState(false);
  const [furnaceId, setFurnaceId] = useState('');
  const [said, tell] = useState('');
  const press = useAction();
  const checked = useMemo(() => checkForm(form), [form]);
  const furnace = useShell().feed.state.value?.furnaces.get(furnaceId);
  const faults = shownFaults(checked.faults, tried);

  const save = (event: Event) => {
    event.preventDefault();
    setTried(true);
    const { draft } = checked;
    if (draft === null) return;
    press.run(async () => {
      await keep(draft);
      navigate({ view: 'schedules' });
    });
  };
  // Typed numbers make a draft; where the schedule came from stays with it.
  const keep = (typed: ScheduleDraft) => {
    const draft = stored?.basis === undefined ? typed : { ...typed, basis: stored.basis };
    return stored ? api.changeSchedule(stored.id, draft) : api.createSchedule(draft);
  };
  return (
    <Page title={stored ? editorWords.editTitle(stored.name) : editorWords.newTitle} actions={<ToList />}>
      <form class="editor" onSubmit={save} noValidate>
        <div class="editor-main">
          <Head form={form} act={act} faults={faults} furnaceId={furnaceId} onFurnace={setFurnaceId} />
          <SegmentList
            form={form}
            faults={faults}
            warnings={ratingWarnings(form, furnace)}
            act={act}
            tell={tell}
          />
          <p class="sr-only" role="status">
            {said}
          </p>
          {tried && <FaultSummary faults={faultLines(faults)} />}
          <ProblemNote error={press.error} />
          <p class="aside">{stored ? editorWords.version(stored.version) : editorWords.firstVersion}</p>
          <div class="form-acts">
            <Button type="submit" tone="main" busy={press.busy}>
              {stored ? editorWords.saveVersion(stored.version + 1) : editorWords.saveNew}
            </Button>
            <LinkButton href={hrefTo({ view: 'schedules' })}>{editorWords.leave}</LinkButton>
          </div>
        </div>
        <aside class="editor-curve" aria-label={editorWords.preview}>
          <h2>{editorWords.preview}</h2>
          <PlanPreview name={form.name} segments={checked.readable} unit={form.unit} />
          {checked.readable.length < form.segments.length && <p class="aside">{editorWords.previewWaits}</p>}
          {stored?.basis && (
            <Basis basis={stored.basis} segments={checked.draft?.segments ?? stored.segments} />
          )}
        </aside>
      </form>
    </Page>
  );
}

export function ToList() {
  return <LinkButton href={hrefTo({ view: 'schedules' })}>{editorWords.toList}</LinkButton>;
}

interface HeadProps {
  readonly form: ScheduleForm;
  readonly act: (action: FormAction) => void;
  readonly faults: Readonly<Record<string, string>>;
  readonly furnaceId: string;
  readonly onFurnace: (id: string) => void;
}

function Head({ form, act, faults, furnaceId, onFurnace }: HeadProps) {
  const furnaces = useShell().feed.state.value?.furnaces ?? new Map();
  const furnace = furnaces.get(furnaceId);
  return (
    <div class="form">
      <TextField
        label={editorWords.name}
        value={form.name}
        onChange={(text) => act({ type: 'name', text })}
        maxLength={80}
        error={faults.name}
      />
      <TextField
        label={editorWords.note}
        hint={editorWords.noteHint}
        value={form.note}
        onChange={(text) => act({ type: 'note', text })}
        rows={2}
        maxLength={2000}
        error={faults.note}
      />
      <div class="form-row">
        <SelectField<DisplayUnit>
          label={editorWords.unit}
          value={form.unit}
          options={[
            { value: 'Cel', label: '°C' },
            { value: '[degF]', label: '°F' },
          ]}
          onChange={(unit) => act({ type: 'unit', unit })}
        />
        <SelectField
          label={editorWords.furnace}
          value={furnaceId}
          options={[
            { value: '', label: editorWords.noFurnace },
            ...[...furnaces.values()].map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={onFurnace}
          hint={furnace && editorWords.furnaceHint(temperature(furnace.ratedCelsius, form.unit))}
        />
      </div>
    </div>
  );
}
