import type { Refusal } from '../../hub/contract/shop.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { reasonWords, refusalWords } from '../words/setup.ts';
import { dayAndTime } from '../words/time.ts';

const COLUMNS: readonly Column<Refusal>[] = [
  { key: 'at', head: refusalWords.at, cell: (refusal) => dayAndTime(refusal.at) },
  { key: 'node', head: refusalWords.node, cell: (refusal) => refusal.node },
  { key: 'topic', head: refusalWords.topic, cell: (refusal) => <code>{refusal.topic}</code> },
  {
    key: 'reason',
    head: refusalWords.reason,
    cell: (refusal) => (
      <>
        {reasonWords(refusal.reason)}
        <br />
        <span class="aside">{refusal.detail}</span>
      </>
    ),
  },
  {
    key: 'payload',
    head: refusalWords.payload,
    cell: (refusal) => (
      <>
        <code class="payload">{refusal.payloadText}</code>
        <span class="aside">{refusalWords.bytes(refusal.payloadBytes)}</span>
      </>
    ),
  },
];

/** The last payloads that were refused, as they came. `freshness` changes when there are new ones. */
export function Refusals({ freshness }: { readonly freshness: string }) {
  const { api } = useShell();
  const { answer, reload } = useAnswer(`refusals ${freshness}`, () => api.setup.listRefusals());
  return (
    <section class="setup-part" aria-labelledby="refusals-head">
      <h2 id="refusals-head">{refusalWords.title}</h2>
      <p class="aside">{refusalWords.long}</p>
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && (
        <Table
          caption={refusalWords.caption}
          hideCaption
          columns={COLUMNS}
          rows={answer.value}
          rowKey={(refusal) => refusal.id}
          empty={refusalWords.empty}
        />
      )}
      <p>
        <Button onPress={reload}>{refusalWords.reload}</Button>
      </p>
    </section>
  );
}
