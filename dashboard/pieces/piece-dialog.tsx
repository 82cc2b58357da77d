import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import type { Piece } from '../../hub/contract/piece.ts';
import type { RouteTemplate } from '../../hub/contract/route-template.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { FaultSummary } from '../parts/fault-summary.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { useTextForm } from '../setup/use-text-form.ts';
import { useShell } from '../shell.ts';
import { unitNamed } from '../words/format.ts';
import { pieceFormWords, piecesWords } from '../words/pieces.ts';
import { nextMark } from './mark.ts';
import { pieceFieldName } from './piece-field-name.ts';
import { checkPiece, isEmptyFault, type PieceTexts, type PieceValue, pieceTexts } from './piece-form.ts';
import { refusedAt } from './refused.ts';
import { SectionFields } from './section-fields.tsx';
import { SteelPart } from './steel-part.tsx';

interface PieceDialogProps {
  /** null: a new piece. */
  readonly piece: Piece | null;
  readonly onClose: () => void;
  readonly onDone: (piece: Piece) => void;
}

interface Known {
  readonly steels: readonly SteelSummary[];
  readonly templates: readonly RouteTemplate[];
  /** Marks of the newest pieces, the newest first. */
  readonly marks: readonly string[];
}

/** Adds or edits a piece: mark, what it is, steel, section, and for a new one its route. */
export function PieceDialog({ piece, onClose, onDone }: PieceDialogProps) {
  const { api } = useShell();
  const { answer } = useAnswer<Known>('piece-form', async () => {
    const [steels, templates, { pieces }] = await Promise.all([
      api.compute.listSteels(),
      api.pieces.listTemplates(),
      api.pieces.list({ limit: 200 }),
    ]);
    return { steels, templates, marks: pieces.map(({ mark }) => mark) };
  });
  return (
    <Dialog
      title={piece ? pieceFormWords.editTitle(piece.mark) : pieceFormWords.addTitle}
      onClose={onClose}
      closeWord={pieceFormWords.cancel}
    >
      {answer.state === 'waiting' && <p role="status">{piecesWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && <PieceForm piece={piece} known={answer.value} onDone={onDone} />}
    </Dialog>
  );
}

interface FormProps {
  readonly piece: Piece | null;
  readonly known: Known;
  readonly onDone: (piece: Piece) => void;
}

function PieceForm({ piece, known, onDone }: FormProps) {
  const { api, feed } = useShell();
  const massUnit = unitNamed(feed.state.value?.shop.settings.massUnit ?? 'kg');
  const press = useAction();
  const start = pieceTexts(piece, piece ? '' : nextMark(known.marks), massUnit);
  const form = useTextForm<PieceTexts, PieceValue>(start, (texts) => checkPiece(texts, massUnit));
  const isTried = Object.keys(form.listed).length > 0;
  const fault = (path: string) => {
    const words = form.fault(path);
    return (
      (words !== undefined && (isTried || !isEmptyFault(words)) ? words : undefined) ??
      refusedAt(press.error, path)
    );
  };
  const send = ({ templateId, route: _, ...value }: PieceValue) =>
    press.run(async () => {
      onDone(
        await (piece ? api.pieces.change(piece.id, value) : api.pieces.create({ ...value, templateId })),
      );
    });
  const { texts, set } = form;
  const lines = Object.entries(form.listed).map(([path, words]) =>
    pieceFormWords.faultAt(pieceFieldName(path, texts.shape), words),
  );
  return (
    <form class="form" onSubmit={(event) => form.submit(event, send)} noValidate>
      <TextField
        label={pieceFormWords.mark}
        hint={pieceFormWords.markHint}
        value={texts.mark}
        onChange={(mark) => set({ mark })}
        maxLength={24}
        error={fault('mark')}
      />
      <TextField
        label={pieceFormWords.title}
        hint={pieceFormWords.titleHint}
        value={texts.title}
        onChange={(title) => set({ title })}
        maxLength={120}
        error={fault('title')}
      />
      <SteelPart texts={texts} set={set} steels={known.steels} fault={fault} />
      <SectionFields texts={texts} set={set} massUnit={massUnit} fault={fault} />
      {piece === null && (
        <SelectField
          label={pieceFormWords.template}
          value={texts.templateId}
          options={[
            { value: '', label: pieceFormWords.noTemplate },
            ...known.templates.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={(templateId) => set({ templateId })}
        />
      )}
      <TextField
        label={pieceFormWords.note}
        value={texts.note}
        onChange={(note) => set({ note })}
        rows={2}
        maxLength={4000}
        error={fault('note')}
      />
      <FaultSummary faults={lines} />
      <ProblemNote error={press.error} />
      <div class="form-acts">
        <Button type="submit" tone="main" busy={press.busy}>
          {piece ? pieceFormWords.save : pieceFormWords.addThis}
        </Button>
      </div>
    </form>
  );
}
