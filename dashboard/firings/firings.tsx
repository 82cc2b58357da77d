import '../parts/sheets.css';
import './firings.css';
import { useEffect, useState } from 'preact/hooks';
import { Button, LinkButton } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Table } from '../parts/table.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { firingsWords } from '../words/firings.ts';
import { Filters } from './filters.tsx';
import { filterAddress, filterFrom, isNarrowed, withLive } from './list.ts';
import { listColumns } from './list-columns.tsx';
import { useFirings } from './use-firings.ts';

/** Every firing: the running ones on top, then newest first. */
export function Firings() {
  const { feed } = useShell();
  const [filter, setFilter] = useState(() => filterFrom(window.location.hash));
  const state = feed.state.value;
  const freshness = [...(state?.firings.keys() ?? []), ...(state?.alarms.keys() ?? [])]
    .sort((a, b) => a.localeCompare(b))
    .join();
  const pages = useFirings(filter, freshness);
  const unit = state?.shop.settings.displayUnit ?? 'Cel';
  const rows = (pages.rows ?? []).map((row) => withLive(row, state?.firings.get(row.id)));
  const isFiltered = isNarrowed(filter);
  useEffect(() => {
    // Without an entry in the history for every letter that is typed.
    history.replaceState(null, '', `${hrefTo({ view: 'firings' })}${filterAddress(filter)}`);
  }, [filter]);
  return (
    <Page
      title={firingsWords.title}
      actions={<LinkButton href={hrefTo({ view: 'wall' })}>{firingsWords.toWall}</LinkButton>}
    >
      <Filters filter={filter} onChange={setFilter} />
      <ProblemNote error={pages.error} />
      {pages.rows === null && !pages.error && <p role="status">{firingsWords.asking}</p>}
      {pages.rows !== null && (
        <div class="firings-table">
          <Table
            caption={firingsWords.caption}
            columns={listColumns(unit, feed.now.value)}
            rows={rows}
            rowKey={(row) => row.id}
            empty={isFiltered ? firingsWords.emptyFiltered : firingsWords.empty}
          />
        </div>
      )}
      {pages.hasMore && (
        <p>
          <Button busy={pages.busy} onPress={pages.more}>
            {firingsWords.more}
          </Button>
        </p>
      )}
    </Page>
  );
}
