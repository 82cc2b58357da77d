import { useState } from 'preact/hooks';
import type { Furnace } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { Button } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useShell } from '../shell.ts';
import { temperature } from '../words/format.ts';
import { FURNACE_KIND_WORDS, furnaceWords, setupWords } from '../words/setup.ts';
import { fitWords } from '../words/setup-fit.ts';
import { FitDialog } from './fit-dialog.tsx';
import { fitText } from './fit-form.ts';
import { FurnaceDialog } from './furnace-dialog.tsx';

/** Everything that gets hot: add, change, put away. */
export function Furnaces({ state }: { readonly state: FeedState }) {
  const { api } = useShell();
  const [edited, setEdited] = useState<Furnace | 'new' | null>(null);
  const [leaving, setLeaving] = useState<Furnace | null>(null);
  const [fitted, setFitted] = useState<Furnace | null>(null);
  const unit = state.shop.settings.displayUnit;
  const columns: Column<Furnace>[] = [
    { key: 'name', head: furnaceWords.name, cell: (furnace) => furnace.name },
    { key: 'kind', head: furnaceWords.kind, cell: (furnace) => FURNACE_KIND_WORDS[furnace.kind] },
    {
      key: 'rated',
      head: furnaceWords.rated,
      cell: (furnace) => temperature(furnace.ratedCelsius, unit),
      align: 'right',
    },
    {
      key: 'channels',
      head: furnaceWords.channels,
      cell: (furnace) => String(channelsOf(state, furnace.id)),
      align: 'right',
    },
    { key: 'fit', head: fitWords.head, cell: (furnace) => fitText(furnace.fit, unit) },
    { key: 'note', head: furnaceWords.note, cell: (furnace) => furnace.note || setupWords.none },
    {
      key: 'acts',
      head: setupWords.actions,
      cell: (furnace) => (
        <div class="form-acts row-acts">
          <Button name={furnaceWords.edit(furnace.name)} onPress={() => setEdited(furnace)}>
            {setupWords.edit}
          </Button>
          <Button name={fitWords.openName(furnace.name)} onPress={() => setFitted(furnace)}>
            {fitWords.open}
          </Button>
          <Button name={furnaceWords.putAway(furnace.name)} onPress={() => setLeaving(furnace)}>
            {setupWords.putAway}
          </Button>
        </div>
      ),
    },
  ];
  return (
    <>
      <Table
        caption={furnaceWords.caption}
        columns={columns}
        rows={[...state.furnaces.values()]}
        rowKey={(furnace) => furnace.id}
        empty={furnaceWords.empty}
      />
      <p>
        <Button onPress={() => setEdited('new')}>{furnaceWords.add}</Button>
      </p>
      {edited !== null && (
        <FurnaceDialog furnace={edited === 'new' ? null : edited} onClose={() => setEdited(null)} />
      )}
      {fitted && <FitDialog furnace={fitted} state={state} onClose={() => setFitted(null)} />}
      {leaving && (
        <Confirm
          title={furnaceWords.putAwayTitle(leaving.name)}
          words={furnaceWords.putAwayLong}
          yes={setupWords.putAway}
          no={setupWords.keep}
          act={() => api.setup.removeFurnace(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={() => undefined}
        />
      )}
    </>
  );
}

function channelsOf(state: FeedState, furnaceId: string): number {
  return [...state.channels.values()].filter((c) => c.adopted && c.furnaceId === furnaceId).length;
}
