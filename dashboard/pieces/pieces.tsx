import '../parts/sheets.css';
import './pieces.css';
import './bench.css';
import { useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { piecesWords } from '../words/pieces.ts';
import { AddPiece } from './add-piece.tsx';
import { Filters } from './filters.tsx';
import { dueKeys, EVERY_PIECE, type PieceFilter, type PieceRow, rowsOf } from './list.ts';
import { titlesOf } from './said.ts';
import { usePieces } from './use-pieces.ts';

/** Every piece: on the bench, or put away. */
export function Pieces() {
  const { api } = useShell();
  const [filter, setFilter] = useState<PieceFilter>(EVERY_PIECE);
  const pages = usePieces(filter);
  const { answer } = useAnswer('pieces', () => Promise.all([api.compute.listSteels(), api.pieces.bench()]));
  const [steels, bench] = answer.state === 'here' ? answer.value : [[], null];
  const rows = rowsOf(pages.pieces ?? [], filter, titlesOf(steels));
  const isFiltered = JSON.stringify(filter) !== JSON.stringify(EVERY_PIECE);
  return (
    <Page title={piecesWords.title} actions={<AddPiece />}>
      <Filters
        filter={filter}
        onChange={setFilter}
        steels={steels}
        due={bench ? dueKeys(bench) : new Set()}
      />
      <ProblemNote error={pages.error ?? (answer.state === 'failed' ? answer.error : null)} />
      {pages.pieces === null && !pages.error && <p role="status">{piecesWords.asking}</p>}
      {pages.pieces !== null && (
        <RowList rows={rows} empty={isFiltered ? piecesWords.emptyFiltered : piecesWords.empty} />
      )}
      {pages.hasMore && (
        <p>
          <Button busy={pages.busy} onPress={pages.more}>
            {piecesWords.more}
          </Button>
        </p>
      )}
    </Page>
  );
}

interface RowListProps {
  readonly rows: readonly PieceRow[];
  readonly empty: string;
}

/** Rows that are pressed as a whole: a table's links are too small for a glove. */
function RowList({ rows, empty }: RowListProps) {
  if (rows.length === 0) return <p role="status">{empty}</p>;
  return (
    <ul class="plain-list piece-rows" aria-label={piecesWords.caption}>
      {rows.map((row) => (
        <li key={row.id}>
          <a class="piece-row" href={hrefTo({ view: 'piece', id: row.id })}>
            <strong class="piece-mark">{row.mark}</strong>
            <span>
              {row.title}
              {row.archived && <span class="tag">{piecesWords.putAwayTag}</span>}
              <span class="quiet piece-steel">{row.steel}</span>
            </span>
            <span class="piece-due">
              <span class="quiet">{piecesWords.heads.due}: </span>
              {row.due === '' ? piecesWords.nothingDue : row.due}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
