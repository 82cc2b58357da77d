import type { FiringSummary } from '../../hub/contract/firing.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Column } from '../parts/table.tsx';
import { hrefTo } from '../router.ts';
import { firingsWords, STATUS_WORDS } from '../words/firings.ts';
import { temperature } from '../words/format.ts';
import { dayAndTime, duration } from '../words/time.ts';
import { lastedSeconds } from './list.ts';
import { VerdictMark } from './verdict-mark.tsx';

/** The columns of the firings list. */
export function listColumns(unit: DisplayUnit, nowMs: number): Column<FiringSummary>[] {
  const { heads, none } = firingsWords;
  return [
    { key: 'title', head: heads.title, cell: titleCell },
    { key: 'verdict', head: heads.verdict, cell: resultCell },
    { key: 'furnace', head: heads.furnace, cell: (row) => row.furnaceName },
    { key: 'started', head: heads.started, cell: (row) => dayAndTime(row.startedAt), align: 'right' },
    { key: 'lasted', head: heads.lasted, cell: (row) => lastedCell(row, nowMs), align: 'right' },
    {
      key: 'peak',
      head: heads.peak,
      cell: (row) => (row.peakCelsius === null ? none : temperature(row.peakCelsius, unit)),
      align: 'right',
    },
    { key: 'soak', head: heads.soak, cell: (row) => duration(row.soakSeconds), align: 'right' },
    { key: 'alarms', head: heads.alarms, cell: (row) => String(row.alarmCount), align: 'right' },
  ];
}

function titleCell(row: FiringSummary) {
  return (
    <>
      <a class="firing-link" href={hrefTo({ view: 'firing', id: row.id })}>
        {row.title || row.scheduleName}
      </a>
      {row.simulated && <span class="tag">{firingsWords.simulated}</span>}
    </>
  );
}

function resultCell(row: FiringSummary) {
  if (row.status === 'running') return <span class="running-mark">{STATUS_WORDS.running}</span>;
  return (
    <>
      <VerdictMark verdict={row.verdict} />
      {row.status === 'abandoned' && <span class="tag">{STATUS_WORDS.abandoned}</span>}
    </>
  );
}

function lastedCell(row: FiringSummary, nowMs: number): string {
  const lasted = duration(lastedSeconds(row, nowMs));
  return row.status === 'running' ? firingsWords.soFar(lasted) : lasted;
}
