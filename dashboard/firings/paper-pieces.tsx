import type { FiringFindings } from '../../hub/contract/firing-record.ts';
import type { RecordPiece } from '../../hub/contract/firing-record-piece.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { findingWords } from '../words/findings.ts';
import { VERDICT_WORDS } from '../words/firings.ts';
import { forPaper } from './paper-list.ts';
import { claimed, heldText, peakText, timeText } from './piece-facts.ts';

interface PaperPiecesProps {
  readonly findings: FiringFindings;
  readonly unit: DisplayUnit;
  /** So many go on paper; the record has them all. */
  readonly most: number;
}

const { heads } = findingWords;

/** The pieces on paper: a row each, with the reason that made the verdict. */
export function PaperPieces({ findings, unit, most }: PaperPiecesProps) {
  const { shown, more } = forPaper(findings.pieces, most);
  if (shown.length === 0) return null;
  return (
    <section class="paper-only">
      <h2>{findingWords.head}</h2>
      <table class="paper-pieces">
        <thead>
          <tr>
            {Object.values(heads).map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((piece) => (
            <PieceRow key={piece.pieceId} piece={piece} unit={unit} />
          ))}
        </tbody>
      </table>
      <p>{findingWords.limits}</p>
      {more > 0 && <p>{findingWords.morePieces(more)}</p>}
      {findings.earlier.slice(0, 2).map(({ judgedAt, text }) => (
        <p key={judgedAt}>{findingWords.earlierAt(judgedAt, text)}</p>
      ))}
    </section>
  );
}

function PieceRow({ piece, unit }: { readonly piece: RecordPiece; readonly unit: DisplayUnit }) {
  const figures = claimed(piece);
  return (
    <tr>
      <th scope="row">{piece.mark}</th>
      <td>{piece.verdict === 'pending' ? VERDICT_WORDS.pending : piece.text}</td>
      <td>
        {heldText(piece, unit)}
        <br />
        {peakText(piece, unit)}
      </td>
      <td>{`${timeText(piece.soakSeconds)} / ${timeText(piece.airSoakSeconds)}`}</td>
      <td>{figures === '' ? findingWords.unknown : `${figures}.`}</td>
    </tr>
  );
}
