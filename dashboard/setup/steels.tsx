import { useState } from 'preact/hooks';
import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import type { FeedState } from '../feed/state.ts';
import { Button } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { compositionText } from '../steel/composition.ts';
import { setupWords } from '../words/setup.ts';
import { ownSteelWords } from '../words/setup-steels.ts';
import { Certificates } from './certificates.tsx';
import { SteelDialog } from './steel-dialog.tsx';

/** The shop's own steels, and the certificates of its bars. */
export function Steels({ state }: { readonly state: FeedState }) {
  const { api } = useShell();
  const { answer, reload } = useAnswer('steels', () => api.compute.listSteels());
  const [edited, setEdited] = useState<SteelSummary | 'new' | null>(null);
  const [leaving, setLeaving] = useState<SteelSummary | null>(null);
  if (answer.state === 'waiting') return <p role="status">{setupWords.asking}</p>;
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  return (
    <>
      <p class="aside">{ownSteelWords.long}</p>
      <Table
        caption={ownSteelWords.caption}
        columns={columnsWith(setEdited, setLeaving)}
        rows={answer.value.filter(({ origin }) => origin === 'own')}
        rowKey={(steel) => steel.id}
        empty={ownSteelWords.empty}
      />
      <p>
        <Button onPress={() => setEdited('new')}>{ownSteelWords.add}</Button>
      </p>
      <Certificates steels={answer.value} />
      {edited !== null && (
        <SteelDialog
          steel={edited === 'new' ? null : edited}
          unit={state.shop.settings.displayUnit}
          onClose={() => setEdited(null)}
          onDone={reload}
        />
      )}
      {leaving && (
        <Confirm
          title={ownSteelWords.putAwayTitle(leaving.title)}
          words={ownSteelWords.putAwayLong}
          yes={setupWords.putAway}
          no={setupWords.keep}
          act={() => api.steels.putAway(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={reload}
        />
      )}
    </>
  );
}

function columnsWith(
  edit: (steel: SteelSummary) => void,
  leave: (steel: SteelSummary) => void,
): Column<SteelSummary>[] {
  return [
    { key: 'name', head: ownSteelWords.name, cell: ({ title }) => title },
    { key: 'made', head: ownSteelWords.composition, cell: ({ nominal }) => compositionText(nominal) },
    {
      key: 'acts',
      head: setupWords.actions,
      cell: (steel) => (
        <div class="form-acts row-acts">
          <Button name={ownSteelWords.edit(steel.title)} onPress={() => edit(steel)}>
            {setupWords.edit}
          </Button>
          <Button name={ownSteelWords.putAway(steel.title)} onPress={() => leave(steel)}>
            {setupWords.putAway}
          </Button>
        </div>
      ),
    },
  ];
}
