import '../parts/sheets.css';
import './firings.css';
import { useState } from 'preact/hooks';
import { FiringStatus } from '../../hub/contract/firing.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { SelectField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Table } from '../parts/table.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { firingsWords, STATUS_WORDS } from '../words/firings.ts';
import { EVERYTHING, type FiringFilter, withLive } from './list.ts';
import { listColumns } from './list-columns.tsx';
import { useFirings } from './use-firings.ts';

/** Every firing: the running ones on top, then newest first. */
export function Firings() {
  const { feed } = useShell();
  const [filter, setFilter] = useState<FiringFilter>(EVERYTHING);
  const state = feed.state.value;
  const freshness = [...(state?.firings.keys() ?? []), ...(state?.alarms.keys() ?? [])]
    .sort((a, b) => a.localeCompare(b))
    .join();
  const pages = useFirings(filter, freshness);
  const unit = state?.shop.settings.displayUnit ?? 'Cel';
  const rows = (pages.rows ?? []).map((row) => withLive(row, state?.firings.get(row.id)));
  const isFiltered = filter.furnaceId !== '' || filter.status !== '';
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

interface FiltersProps {
  readonly filter: FiringFilter;
  readonly onChange: (filter: FiringFilter) => void;
}

function Filters({ filter, onChange }: FiltersProps) {
  const { feed } = useShell();
  const furnaces = [...(feed.state.value?.furnaces.values() ?? [])];
  return (
    <fieldset class="form-row">
      <legend class="sr-only">{firingsWords.filters}</legend>
      <SelectField
        label={firingsWords.furnace}
        value={filter.furnaceId}
        options={[
          { value: '', label: firingsWords.everyFurnace },
          ...furnaces.map((furnace) => ({ value: furnace.id, label: furnace.name })),
        ]}
        onChange={(furnaceId) => onChange({ ...filter, furnaceId })}
      />
      <SelectField
        label={firingsWords.status}
        value={filter.status}
        options={[
          { value: '' as const, label: firingsWords.everyStatus },
          ...FiringStatus.options.map((value) => ({ value, label: STATUS_WORDS[value] })),
        ]}
        onChange={(status) => onChange({ ...filter, status })}
      />
    </fieldset>
  );
}
