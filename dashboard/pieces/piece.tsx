import '../parts/sheets.css';
import './pieces.css';
import './bench.css';
import { useState } from 'preact/hooks';
import type { Piece, PieceHistory } from '../../hub/contract/piece.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { TextField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { UnitSwitch, useUnit } from '../parts/unit-switch.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { pieceWords } from '../words/pieces.ts';
import { firingsMark } from './burning.ts';
import { History } from './history.tsx';
import { PieceDialog } from './piece-dialog.tsx';
import { PieceFacts } from './piece-facts.tsx';
import { RouteTicks } from './route-ticks.tsx';
import { Seeing } from './seeing.tsx';
import { stepName } from './step-name.ts';
import { whoIsHere } from './who.ts';

/** The piece that carries a mark now. Mount anew for another mark. */
export function PieceByMark({ mark }: { readonly mark: string }) {
  const { api } = useShell();
  const { answer } = useAnswer(mark, async () => {
    const { pieces } = await api.pieces.list({ mark, archived: 'any', limit: 20 });
    // A mark is free again once its piece is put away: the one on the bench is meant, else the newest.
    return pieces.find(({ archived }) => !archived) ?? pieces[0] ?? null;
  });
  if (answer.state === 'here' && answer.value !== null) return <PiecePage id={answer.value.id} />;
  return (
    <Page title={mark} actions={<ToPieces />}>
      {answer.state === 'waiting' && <p role="status">{pieceWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && <p role="alert">{pieceWords.unknownMark(mark)}</p>}
    </Page>
  );
}

/** One piece: what it is, its route to tick, what was seen, its history. Mount anew for another id. */
export function PiecePage({ id }: { readonly id: string }) {
  const { api, feed } = useShell();
  // A firing that begins or ends may tick a step of this piece.
  const { answer, reload } = useAnswer(firingsMark(feed.state.value), () => api.pieces.history(id));
  switch (answer.state) {
    case 'waiting':
      return (
        <Page title={pieceWords.title} actions={<ToPieces />}>
          <p role="status">{pieceWords.asking}</p>
        </Page>
      );
    case 'failed':
      return (
        <Page title={pieceWords.title} actions={<ToPieces />}>
          <ProblemNote error={answer.error} />
        </Page>
      );
    case 'here':
      return <Known history={answer.value} reload={reload} />;
    default:
      return answer satisfies never;
  }
}

interface KnownProps {
  readonly history: PieceHistory;
  readonly reload: () => void;
}

function Known({ history, reload }: KnownProps) {
  const { piece } = history;
  const [unit, setUnit] = useUnit();
  return (
    <Page title={piece.mark} actions={<Actions piece={piece} reload={reload} />}>
      {piece.title !== '' && <p class="piece-title">{piece.title}</p>}
      {piece.archived && <p role="status">{pieceWords.away}</p>}
      <PieceFacts piece={piece} />
      <div class="piece-columns">
        <RouteTicks piece={piece} reload={reload} />
        <Seeing piece={piece} unit={unit} reload={reload} />
      </div>
      <History history={history} unit={unit} reload={reload} nameOf={(stepId) => nameIn(piece, stepId)} />
      <div class="form-row">
        <TextField
          label={pieceWords.by}
          hint={pieceWords.byHint}
          value={whoIsHere.value}
          maxLength={80}
          onChange={(name) => {
            whoIsHere.value = name;
          }}
        />
        <UnitSwitch unit={unit} onUnit={setUnit} />
      </div>
    </Page>
  );
}

function nameIn({ route }: Piece, stepId: string | null): string {
  const step = route.find(({ id }) => id === stepId);
  return step ? stepName(step) : '';
}

function ToPieces() {
  return <LinkButton href={hrefTo({ view: 'pieces' })}>{pieceWords.toList}</LinkButton>;
}

interface ActionsProps {
  readonly piece: Piece;
  readonly reload: () => void;
}

function Actions({ piece, reload }: ActionsProps) {
  const { api } = useShell();
  const [open, setOpen] = useState<'edit' | 'away' | null>(null);
  const press = useAction();
  const takeOut = () =>
    press.run(async () => {
      await api.pieces.change(piece.id, { archived: false });
      reload();
    });
  return (
    <>
      <LinkButton href={hrefTo({ view: 'piece-label', id: piece.id })}>{pieceWords.label}</LinkButton>
      <Button onPress={() => setOpen('edit')}>{pieceWords.edit}</Button>
      {piece.archived ? (
        <Button busy={press.busy} onPress={takeOut}>
          {pieceWords.takeOut}
        </Button>
      ) : (
        <Button onPress={() => setOpen('away')}>{pieceWords.putAway}</Button>
      )}
      <ToPieces />
      <ProblemNote error={press.error} />
      {open === 'edit' && (
        <PieceDialog
          piece={piece}
          onClose={() => setOpen(null)}
          onDone={() => {
            setOpen(null);
            reload();
          }}
        />
      )}
      {open === 'away' && (
        <Confirm
          title={pieceWords.putAwayTitle(piece.mark)}
          words={pieceWords.putAwayLong}
          yes={pieceWords.putAway}
          no={pieceWords.keep}
          act={() => api.pieces.putAway(piece.id)}
          onClose={() => setOpen(null)}
          onDone={reload}
        />
      )}
    </>
  );
}
