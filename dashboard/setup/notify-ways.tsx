import type { NotifyLogEntry, NotifyWay } from '../../hub/contract/notify.ts';
import { Button } from '../parts/button.tsx';
import { Shape } from '../parts/shape.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { notifyWords, ruleText, WAY_KIND_WORDS } from '../words/notify.ts';
import { setupWords } from '../words/setup.ts';
import { dayAndTime } from '../words/time.ts';

interface WayTableProps {
  readonly ways: readonly NotifyWay[];
  /** The newest first. */
  readonly log: readonly NotifyLogEntry[];
  /** A test is under way. */
  readonly busy: boolean;
  readonly onTest: (way: NotifyWay) => void;
  readonly onEdit: (way: NotifyWay) => void;
  readonly onRemove: (way: NotifyWay) => void;
}

export function WayTable(props: WayTableProps) {
  return (
    <Table
      caption={notifyWords.caption}
      columns={columnsFor(props)}
      rows={props.ways}
      rowKey={(way) => way.id}
      empty={notifyWords.empty}
    />
  );
}

function columnsFor({ log, busy, onTest, onEdit, onRemove }: WayTableProps): Column<NotifyWay>[] {
  return [
    { key: 'name', head: notifyWords.way, cell: ({ name }) => name },
    {
      key: 'to',
      head: notifyWords.to,
      cell: ({ target }) => (
        <span class="notify-address">
          {WAY_KIND_WORDS[target.kind]}: {placeOf(target)}
        </span>
      ),
    },
    { key: 'when', head: notifyWords.when, cell: ({ rule }) => ruleText(rule) },
    {
      key: 'state',
      head: notifyWords.state,
      cell: (way) =>
        stateOf(
          way,
          log.find(({ wayId }) => wayId === way.id),
        ),
    },
    {
      key: 'acts',
      head: setupWords.actions,
      cell: (way) => (
        <div class="form-acts row-acts">
          <Button name={notifyWords.testOf(way.name)} busy={busy} onPress={() => onTest(way)}>
            {notifyWords.test}
          </Button>
          <Button name={notifyWords.edit(way.name)} onPress={() => onEdit(way)}>
            {setupWords.edit}
          </Button>
          <Button name={notifyWords.remove(way.name)} onPress={() => onRemove(way)}>
            {notifyWords.removeShort}
          </Button>
        </div>
      ),
    },
  ];
}

function placeOf(target: NotifyWay['target']): string {
  return target.kind === 'e-mail' ? target.to.join(', ') : target.origin;
}

/** Without trouble the last line of the log counts: a test that failed a moment ago is something known against it. */
function stateOf({ enabled, trouble }: NotifyWay, last: NotifyLogEntry | undefined) {
  if (!enabled) return notifyWords.off;
  if (trouble !== null) return warned(notifyWords.trouble(dayAndTime(trouble.since), trouble.detail));
  if (last === undefined) return notifyWords.untried;
  const at = dayAndTime(last.at);
  return last.outcome === 'sent' ? notifyWords.lastSent(at) : warned(notifyWords.lastFailed(at, last.detail));
}

function warned(words: string) {
  return (
    <>
      <Shape of="warning" /> {words}
    </>
  );
}
