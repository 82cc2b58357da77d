import type { NotifyLogEntry } from '../../hub/contract/notify.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import type { Answer } from '../parts/use-answer.ts';
import { notifyWords, WAY_KIND_WORDS } from '../words/notify.ts';
import { setupWords } from '../words/setup.ts';
import { dayAndTime } from '../words/time.ts';

const COLUMNS: Column<NotifyLogEntry>[] = [
  { key: 'at', head: notifyWords.at, cell: ({ at }) => dayAndTime(at) },
  { key: 'way', head: notifyWords.way, cell: ({ way, kind }) => `${way} (${WAY_KIND_WORDS[kind]})` },
  {
    key: 'what',
    head: notifyWords.what,
    cell: (entry) => [notifyWords.reason(entry), entry.title].filter((part) => part !== '').join(': '),
  },
  {
    key: 'outcome',
    head: notifyWords.outcome,
    cell: ({ outcome, detail }) => (outcome === 'sent' ? notifyWords.sent : notifyWords.failed(detail)),
  },
];

interface NotifyLogProps {
  readonly answer: Answer<NotifyLogEntry[]>;
  readonly reload: () => void;
}

/** What was sent and what failed, the newest first. */
export function NotifyLog({ answer, reload }: NotifyLogProps) {
  if (answer.state === 'waiting') return <p role="status">{setupWords.asking}</p>;
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  return (
    <>
      <Table
        caption={notifyWords.log}
        columns={COLUMNS}
        rows={answer.value}
        rowKey={({ id }) => String(id)}
        empty={notifyWords.logEmpty}
      />
      <p>
        <Button onPress={reload}>{notifyWords.logAgain}</Button>
      </p>
    </>
  );
}
