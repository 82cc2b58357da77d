import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Column } from '../parts/table.tsx';
import { Table } from '../parts/table.tsx';
import { firingWords, segmentWords } from '../words/firings.ts';
import { tied } from '../words/tied.ts';
import { paperBudget } from './paper-list.ts';
import { type SegmentRow, segmentRows } from './segment-rows.ts';
import { VerdictMark } from './verdict-mark.tsx';

const { heads } = segmentWords;

const COLUMNS: readonly Column<SegmentRow>[] = [
  { key: 'name', head: heads.name, cell: (row) => tied(row.name) },
  { key: 'planned', head: heads.planned, cell: (row) => tied(row.terms) },
  { key: 'verdict', head: heads.verdict, cell: verdictCell },
  {
    key: 'achieved',
    head: heads.achieved,
    cell: (row) => (
      <>
        {tied(row.achieved)}
        <br /> {tied(row.took)}
      </>
    ),
  },
  { key: 'soak', head: heads.soak, cell: (row) => tied(row.soak) },
  { key: 'span', head: heads.span, cell: (row) => tied(row.span) },
  { key: 'over', head: heads.over, cell: (row) => tied(row.over) },
  { key: 'rates', head: heads.rates, cell: (row) => tied(row.rates) },
  { key: 'blind', head: heads.blind, cell: (row) => tied(row.blind), align: 'right' },
];

interface SegmentTableProps {
  readonly firing: FiringDetail;
  readonly unit: DisplayUnit;
}

/** Planned beside achieved, segment by segment, with what the judge says and why. */
export function SegmentTable({ firing, unit }: SegmentTableProps) {
  const { rows } = paperBudget(firing.schedule.segments.length);
  return (
    <div class={`segment-table paper-${rows}`}>
      <Table
        caption={firingWords.segments}
        columns={COLUMNS}
        rows={segmentRows(firing, unit)}
        rowKey={(row) => row.key}
        empty={segmentWords.none}
      />
    </div>
  );
}

function verdictCell(row: SegmentRow) {
  if (row.state === 'waiting') return segmentWords.waiting;
  if (row.state === 'running') return <span class="running-mark">{segmentWords.running}</span>;
  if (row.state === 'skipped') return segmentWords.skipped;
  return (
    <>
      <VerdictMark verdict={row.verdict} />
      {row.reasons.length > 0 && (
        <ul class="reasons">
          {row.reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
    </>
  );
}
