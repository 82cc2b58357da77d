import '../parts/sheets.css';
import './schedules.css';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { NEW_SCHEDULE } from '../router.ts';
import { useShell } from '../shell.ts';
import { editorWords } from '../words/schedules.ts';
import { Editor, ToList } from './editor.tsx';
import { emptyForm, formOf } from './form.ts';

/** The page that writes one schedule. Mount anew for another id. */
export function SchedulePage({ id }: { readonly id: string }) {
  return id === NEW_SCHEDULE ? <NewSchedule /> : <StoredSchedule id={id} />;
}

function NewSchedule() {
  const { feed } = useShell();
  // The first snapshot says in which unit the shop thinks; a form begun before it would change under the hands.
  const unit = feed.state.value?.shop.settings.displayUnit;
  if (unit === undefined) return <Waiting />;
  return <Editor start={emptyForm(unit)} stored={null} />;
}

function StoredSchedule({ id }: { readonly id: string }) {
  const { api } = useShell();
  const { answer } = useAnswer(id, () => api.schedule(id));
  if (answer.state === 'waiting') return <Waiting />;
  if (answer.state === 'failed') {
    return (
      <Page title={editorWords.newTitle} actions={<ToList />}>
        <ProblemNote error={answer.error} />
      </Page>
    );
  }
  return <Editor start={formOf(answer.value)} stored={answer.value} />;
}

function Waiting() {
  return (
    <Page title={editorWords.newTitle} actions={<ToList />}>
      <p role="status">{editorWords.asking}</p>
    </Page>
  );
}
