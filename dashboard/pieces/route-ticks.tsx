import { useReducer, useState } from 'preact/hooks';
import type { Piece, RouteStep } from '../../hub/contract/piece.ts';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Action, useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { pieceFormWords, pieceWords } from '../words/pieces.ts';
import { refusedAt } from './refused.ts';
import { pieceRouteForm, reduceRoute, routeDraft } from './route-form.ts';
import { dueStep } from './step-name.ts';
import { StepTick } from './step-tick.tsx';
import { StepsEditor } from './steps-editor.tsx';
import { whoIsHere } from './who.ts';

interface RouteTicksProps {
  readonly piece: Piece;
  readonly reload: () => void;
}

/** The route of a piece, each step with its tick: made to be pressed with a glove on. */
export function RouteTicks({ piece, reload }: RouteTicksProps) {
  const { api } = useShell();
  const [changing, setChanging] = useState(false);
  const press = useAction();
  const due = dueStep(piece);
  const tick = ({ id }: RouteStep, outcome: 'done' | 'skipped') =>
    press.run(async () => {
      await api.pieces.tick(piece.id, id, { outcome, by: whoIsHere.value });
      reload();
    });
  const untick = ({ id }: RouteStep) =>
    press.run(async () => {
      await api.pieces.untick(piece.id, id);
      reload();
    });
  const tickOf = (step: RouteStep, index: number) => (
    <StepTick
      key={step.id}
      step={step}
      index={index}
      isDue={step.id === due?.id}
      before={piece.route[index - 1]?.done?.outcome ?? null}
      busy={press.busy}
      onTick={(outcome) => tick(step, outcome)}
      onUntick={() => untick(step)}
    />
  );
  // What is behind is folded away: the step that is due must lie under the thumb.
  const count = due === null ? piece.route.length : piece.route.indexOf(due);
  const [behind, ahead] = [piece.route.slice(0, count), piece.route.slice(count)];
  return (
    <section class="piece-part" aria-labelledby="piece-route-head">
      <h2 id="piece-route-head">{pieceWords.route}</h2>
      {piece.route.length === 0 && <p>{pieceWords.noRoute}</p>}
      <ProblemNote error={press.error} />
      {behind.length > 0 && (
        <details>
          <summary>{pieceWords.behind(behind.length)}</summary>
          <ol class="plain-list ticks">{behind.map(tickOf)}</ol>
        </details>
      )}
      <ol class="plain-list ticks">{ahead.map((step, index) => tickOf(step, behind.length + index))}</ol>
      <div class="form-acts">
        <Button onPress={() => setChanging(true)}>{pieceWords.changeRoute}</Button>
        {due?.kind === 'heat' && <LinkButton href={hrefTo({ view: 'bench' })}>{pieceWords.fire}</LinkButton>}
      </div>
      {changing && (
        <RouteDialog piece={piece} press={press} onClose={() => setChanging(false)} onDone={reload} />
      )}
    </section>
  );
}

interface RouteDialogProps {
  readonly piece: Piece;
  readonly press: Action;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

function RouteDialog({ piece, press, onClose, onDone }: RouteDialogProps) {
  const { api } = useShell();
  const { answer } = useAnswer('schedules', () => api.listSchedules());
  const schedules: readonly Schedule[] = answer.state === 'here' ? answer.value : [];
  const [form, act] = useReducer(reduceRoute, piece.route, pieceRouteForm);
  const save = (event: Event) => {
    event.preventDefault();
    press.run(async () => {
      await api.pieces.change(piece.id, { route: routeDraft(form) });
      onDone();
      onClose();
    });
  };
  return (
    <Dialog
      title={pieceWords.changeRouteTitle(piece.mark)}
      onClose={onClose}
      closeWord={pieceFormWords.cancel}
    >
      <form class="form" onSubmit={save} noValidate>
        <StepsEditor
          form={form}
          act={act}
          schedules={schedules}
          fault={(path) =>
            refusedAt(press.error, path === '' ? 'route' : `route.${path.replaceAll('/', '.')}`)
          }
        />
        <ProblemNote error={press.error} />
        <div class="form-acts">
          <Button type="submit" tone="main" busy={press.busy}>
            {pieceFormWords.save}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
