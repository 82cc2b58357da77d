import '../parts/sheets.css';
import './pieces.css';
import './bench.css';
import { useReducer, useState } from 'preact/hooks';
import { type RouteTemplate, RouteTemplateDraft } from '../../hub/contract/route-template.ts';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { type Faults, faultsOf } from '../parts/faults.ts';
import { TextField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo, NEW_ROUTE, navigate } from '../router.ts';
import { useShell } from '../shell.ts';
import { routesWords } from '../words/bench.ts';
import { refusedAt } from './refused.ts';
import { reduceRoute, templateForm } from './route-form.ts';
import { StepsEditor } from './steps-editor.tsx';

/** One template to edit, or a new one. Mount anew for another id. */
export function RoutePage({ id }: { readonly id: string }) {
  const { api } = useShell();
  const { answer } = useAnswer(id, () =>
    Promise.all([id === NEW_ROUTE ? null : api.pieces.template(id), api.listSchedules()]),
  );
  switch (answer.state) {
    case 'waiting':
      return (
        <Page title={routesWords.title}>
          <p role="status">{routesWords.asking}</p>
        </Page>
      );
    case 'failed':
      return (
        <Page title={routesWords.title}>
          <ProblemNote error={answer.error} />
        </Page>
      );
    case 'here':
      return <Editor template={answer.value[0]} schedules={answer.value[1]} />;
    default:
      return answer satisfies never;
  }
}

interface EditorProps {
  readonly template: RouteTemplate | null;
  readonly schedules: readonly Schedule[];
}

function Editor({ template, schedules }: EditorProps) {
  const { api } = useShell();
  const [name, setName] = useState(template?.name ?? '');
  const [note, setNote] = useState(template?.note ?? '');
  const [form, act] = useReducer(reduceRoute, template?.steps ?? [], templateForm);
  const [faults, setFaults] = useState<Faults>({});
  const press = useAction();
  const fault = (path: string) => faults[path] ?? refusedAt(press.error, path);
  const save = (event: Event) => {
    event.preventDefault();
    const draft = RouteTemplateDraft.safeParse({ name, note, steps: form.steps.map(({ step }) => step) });
    setFaults(draft.success ? {} : faultsOf(draft.error.issues));
    if (!draft.success) return;
    press.run(async () => {
      await (template
        ? api.pieces.saveTemplate(template.id, draft.data)
        : api.pieces.createTemplate(draft.data));
      navigate({ view: 'routes' });
    });
  };
  return (
    <Page title={template ? routesWords.editTitle(template.name) : routesWords.newTitle}>
      <form class="form" onSubmit={save} noValidate>
        <div class="form form-narrow">
          <TextField
            label={routesWords.name}
            value={name}
            onChange={setName}
            maxLength={80}
            error={fault('name')}
          />
          <TextField
            label={routesWords.note}
            value={note}
            onChange={setNote}
            rows={2}
            maxLength={2000}
            error={fault('note')}
          />
        </div>
        <StepsEditor
          form={form}
          act={act}
          schedules={schedules}
          fault={(path) => fault(path === '' ? 'steps' : `steps.${path.replaceAll('/', '.')}`)}
        />
        <ProblemNote error={press.error} />
        <div class="form-acts">
          <Button type="submit" tone="main" busy={press.busy}>
            {routesWords.save}
          </Button>
          <LinkButton href={hrefTo({ view: 'routes' })}>{routesWords.leave}</LinkButton>
        </div>
      </form>
    </Page>
  );
}
