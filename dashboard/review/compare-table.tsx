import type { ComparedSegment, FiringComparison } from '../../hub/contract/comparison.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Column, Table } from '../parts/table.tsx';
import { hrefTo } from '../router.ts';
import { compareWords, LEFT_OUT_WORDS } from '../words/review.ts';
import { segmentName } from '../words/segments.ts';
import { dayAndTime } from '../words/time.ts';
import { type CompareRow, compareRows, driftWords } from './compare-rows.ts';

interface CompareTableProps {
  readonly comparison: FiringComparison;
  readonly segment: ComparedSegment;
  readonly unit: DisplayUnit;
}

/** The differences of one segment, and whether anything drifts. */
export function CompareTable({ comparison, segment, unit }: CompareTableProps) {
  const drifts = driftWords(comparison.drifts, segment.index, unit);
  const known = comparison.drifts.some((drift) => drift.segment === segment.index);
  const name = segmentName(segment, unit);
  return (
    <section class="review-part">
      <Table
        caption={compareWords.table(name)}
        columns={columnsOf(segment.kind)}
        rows={compareRows(comparison, segment.index, unit)}
        rowKey={(row) => row.id}
        empty={compareWords.none}
      />
      <p class="aside">
        {compareWords.curveNote} {comparison.referenceId !== null && compareWords.tableNote}
      </p>
      <h3>{compareWords.drifts}</h3>
      {drifts.map((text) => (
        <p key={text}>{text}</p>
      ))}
      {drifts.length === 0 && <p>{known ? compareWords.noDrift : compareWords.fewForDrift}</p>}
      {comparison.leftOut.map(({ firingId, reason }) => (
        <p key={firingId}>
          <a href={hrefTo({ view: 'firing', id: firingId })}>{compareWords.heads.firing}</a>{' '}
          {LEFT_OUT_WORDS[reason]}
        </p>
      ))}
    </section>
  );
}

function columnsOf(kind: ComparedSegment['kind']): Column<CompareRow>[] {
  const { heads } = compareWords;
  const figure = (key: 'soakMean' | 'soakTime' | 'rate' | 'peak' | 'toPlan' | 'toReference') => ({
    ...{ key, head: heads[key], align: 'right' as const },
    cell: (row: CompareRow) => row[key],
  });
  const own = kind === 'soak' ? [figure('soakMean'), figure('soakTime')] : [figure('rate')];
  return [
    {
      key: 'firing',
      head: heads.firing,
      cell: (row) => (
        <>
          <a href={hrefTo({ view: 'firing', id: row.id })}>{row.title}</a>
          {row.isReference && <span class="tag">{compareWords.reference}</span>}
          <span class="review-when">{dayAndTime(row.startedAt)}</span>
        </>
      ),
    },
    ...own,
    figure('peak'),
    figure('toPlan'),
    figure('toReference'),
  ];
}
