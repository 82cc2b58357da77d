import './piece-findings.css';
import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { FiringFindings } from '../../hub/contract/firing-record.ts';
import type { PieceFigure, RecordPiece } from '../../hub/contract/firing-record-piece.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Answer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { airSaid, findingWords, gasSaid } from '../words/findings.ts';
import { pieceFacts } from './piece-facts.ts';
import { VerdictMark } from './verdict-mark.tsx';

interface FindingsProps {
  readonly firing: FiringDetail;
  readonly findings: Answer<FiringFindings>;
  readonly unit: DisplayUnit;
}

/** What the firing did to each piece: the verdict large, then why, then figures with their limits. Screen alone. */
export function PieceFindings({ firing, findings, unit }: FindingsProps) {
  if (firing.pieces.length === 0) return null;
  return (
    <section class="firing-section screen-only" aria-labelledby="pieces-head">
      <h2 id="pieces-head">{findingWords.head}</h2>
      <Said firing={firing} findings={findings} unit={unit} />
    </section>
  );
}

function Said({ firing, findings, unit }: FindingsProps) {
  if (firing.status === 'running') return <p>{findingWords.stillRuns}</p>;
  if (findings.state === 'waiting') return <p role="status">{findingWords.asking}</p>;
  if (findings.state === 'failed') return <p role="alert">{findingWords.failed}</p>;
  return (
    <>
      <ul class="piece-findings">
        {findings.value.pieces.map((piece) => (
          <PieceCard key={piece.pieceId} piece={piece} unit={unit} />
        ))}
      </ul>
      <Earlier findings={findings.value} />
    </>
  );
}

function PieceCard({ piece, unit }: { readonly piece: RecordPiece; readonly unit: DisplayUnit }) {
  const [first, ...rest] = piece.reasons;
  return (
    <li class="piece-finding">
      <h3>
        <a href={hrefTo({ view: 'piece', id: piece.pieceId })}>{piece.mark}</a>{' '}
        <VerdictMark verdict={piece.verdict} />
      </h3>
      {first && <p class="piece-why">{first.text}</p>}
      <dl class="facts">
        {pieceFacts(piece, unit).map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {rest.length > 0 && (
        <ul class="reasons">
          {rest.map(({ code, text }) => (
            <li key={`${code}${text}`}>{text}</li>
          ))}
        </ul>
      )}
      {piece.figures.length > 0 && (
        <details>
          <summary>{findingWords.figures}</summary>
          <ul class="piece-figures">
            {piece.figures.map((figure) => (
              <FigureLine key={figure.kind} figure={figure} />
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

function FigureLine({ figure }: { readonly figure: PieceFigure }) {
  const limits = [...figure.cautions, ...(figure.noClaim === null ? [] : [figure.noClaim])];
  return (
    <li>
      <strong>{figure.text}</strong>
      {limits.map(({ code, text }) => (
        <span key={code}>{findingWords.caution(text)}</span>
      ))}
      {figure.source !== '' && <span class="aside">{findingWords.source(figure.source)}</span>}
    </li>
  );
}

/** Verdicts of earlier rules, beside the one that holds. */
export function Earlier({ findings }: { readonly findings: FiringFindings }) {
  const { judged, earlier } = findings;
  return (
    <div class="judged-by">
      {judged !== null && (
        <p class="aside">{findingWords.rules(judged.judgeVersion, judged.recordVersion)}</p>
      )}
      {earlier.length > 0 && (
        <ul aria-label={findingWords.earlier}>
          {earlier.map(({ judgedAt, text }) => (
            <li key={`${judgedAt}${text}`}>{findingWords.earlierAt(judgedAt, text)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Carbon monoxide and gas while it ran: for the screen and for paper. */
export function Beside({ findings }: { readonly findings: Answer<FiringFindings> }) {
  if (findings.state !== 'here') return null;
  const { air, gas } = findings.value;
  if (air.length === 0 && gas === null) return null;
  return (
    <section class="firing-section" aria-labelledby="beside-head">
      <h2 id="beside-head">{findingWords.beside}</h2>
      <ul class="beside">
        {air.map((place) => (
          <li key={place.channel}>{airSaid(place)}</li>
        ))}
        {gas !== null && <li>{gasSaid(gas)}</li>}
      </ul>
    </section>
  );
}
