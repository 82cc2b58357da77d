import '../parts/sheets.css';
import './label.css';
import { useState } from 'preact/hooks';
import type { Piece } from '../../hub/contract/piece.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { SelectField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { labelWords, pieceWords } from '../words/pieces.ts';
import { isLoopback, markAddress, qrDrawing } from './qr.ts';
import { sectionSaid, steelSaid, titlesOf } from './said.ts';
import { stepName } from './step-name.ts';

type Size = 'small' | 'sheet';

/** A label to print: the mark as large as it goes, and the way back to the piece for a telephone. */
export function LabelPage({ id }: { readonly id: string }) {
  const { api } = useShell();
  const [size, setSize] = useState<Size>('small');
  const { answer } = useAnswer(id, () => Promise.all([api.pieces.read(id), api.compute.listSteels()]));
  const piece = answer.state === 'here' ? answer.value[0] : null;
  const titles = titlesOf(answer.state === 'here' ? answer.value[1] : []);
  return (
    <Page
      title={piece ? labelWords.title(piece.mark) : pieceWords.label}
      actions={<LinkButton href={hrefTo({ view: 'piece', id })}>{labelWords.toPiece}</LinkButton>}
    >
      {answer.state === 'waiting' && <p role="status">{pieceWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {piece && (
        <>
          <div class="form-row screen-only">
            <SelectField<Size>
              label={labelWords.size}
              value={size}
              options={[
                { value: 'small', label: labelWords.small },
                { value: 'sheet', label: labelWords.sheet },
              ]}
              onChange={setSize}
            />
            <Button tone="main" onPress={() => window.print()}>
              {labelWords.print}
            </Button>
          </div>
          {isLoopback(window.location.hostname) && (
            <p class="aside screen-only" role="status">
              {labelWords.loopback}
            </p>
          )}
          <Label piece={piece} steel={steelSaid(piece, titles)} size={size} />
        </>
      )}
    </Page>
  );
}

interface LabelProps {
  readonly piece: Piece;
  readonly steel: string;
  readonly size: Size;
}

function Label({ piece, steel, size }: LabelProps) {
  const address = markAddress(window.location.origin, piece.mark);
  const { size: modules, path } = qrDrawing(address);
  return (
    <figure class={`label label-${size}`}>
      <strong class="label-mark" style={{ '--letters': piece.mark.length }}>
        {piece.mark}
      </strong>
      <svg
        class="label-qr"
        viewBox={`0 0 ${modules} ${modules}`}
        role="img"
        aria-label={labelWords.qr(address)}
        shape-rendering="crispEdges"
      >
        <path d={path} />
      </svg>
      <figcaption class="label-words">
        <span class="label-title">{piece.title}</span>
        <span>{[steel, sectionSaid(piece.section)].join(', ')}</span>
        {size === 'sheet' && (
          <ol class="label-route">
            {piece.route.map((step) => (
              <li key={step.id}>{stepName(step)}</li>
            ))}
          </ol>
        )}
        {size === 'sheet' && <span class="label-address">{address}</span>}
      </figcaption>
    </figure>
  );
}
