import '../parts/sheets.css';
import './schedules.css';
import { useState } from 'preact/hooks';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo, NEW_SCHEDULE, navigate } from '../router.ts';
import { useShell } from '../shell.ts';
import { temperature } from '../words/format.ts';
import { schedulesWords } from '../words/schedules.ts';
import { segmentName, segmentTerms } from '../words/segments.ts';
import { copyName } from './copy-name.ts';

/** Every schedule in its newest version. */
export function Schedules() {
  const { api } = useShell();
  const { answer, reload } = useAnswer('schedules', () => api.listSchedules());
  const actions = (
    <>
      <LinkButton href={hrefTo({ view: 'schedule', id: NEW_SCHEDULE })}>{schedulesWords.write}</LinkButton>
      <LinkButton href={hrefTo({ view: 'wall' })}>{schedulesWords.toWall}</LinkButton>
    </>
  );
  return (
    <Page title={schedulesWords.title} actions={actions}>
      {answer.state === 'waiting' && <p role="status">{schedulesWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && <List schedules={answer.value} reload={reload} />}
    </Page>
  );
}

interface ListProps {
  readonly schedules: readonly Schedule[];
  readonly reload: () => void;
}

function List({ schedules, reload }: ListProps) {
  const { api } = useShell();
  const [leaving, setLeaving] = useState<Schedule | null>(null);
  const press = useAction();
  const duplicate = ({ note, displayUnit, segments, name, basis }: Schedule) =>
    press.run(async () => {
      const copy = copyName(
        name,
        schedules.map((other) => other.name),
      );
      const made = await api.createSchedule({
        name: copy,
        note,
        displayUnit,
        segments,
        ...(basis === undefined ? {} : { basis }),
      });
      navigate({ view: 'schedule', id: made.id });
    });
  const columns = columnsWith((schedule) => (
    <div class="form-acts row-acts">
      <LinkButton
        href={hrefTo({ view: 'schedule', id: schedule.id })}
        name={schedulesWords.editName(schedule.name)}
      >
        {schedulesWords.edit}
      </LinkButton>
      <Button
        name={schedulesWords.duplicateName(schedule.name)}
        busy={press.busy}
        onPress={() => duplicate(schedule)}
      >
        {schedulesWords.duplicate}
      </Button>
      <Button name={schedulesWords.putAwayName(schedule.name)} onPress={() => setLeaving(schedule)}>
        {schedulesWords.putAway}
      </Button>
    </div>
  ));
  return (
    <>
      <ProblemNote error={press.error} />
      <Table
        caption={schedulesWords.caption}
        columns={columns}
        rows={schedules}
        rowKey={(schedule) => schedule.id}
        empty={schedulesWords.empty}
      />
      {leaving && (
        <Confirm
          title={schedulesWords.putAwayTitle(leaving.name)}
          words={schedulesWords.putAwayLong}
          yes={schedulesWords.putAway}
          no={schedulesWords.keep}
          act={() => api.deleteSchedule(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={reload}
        />
      )}
    </>
  );
}

function columnsWith(actions: (schedule: Schedule) => preact.VNode): Column<Schedule>[] {
  const { heads } = schedulesWords;
  return [
    {
      key: 'name',
      head: heads.name,
      cell: (schedule) => (
        <a class="firing-link" href={hrefTo({ view: 'schedule', id: schedule.id })}>
          {schedule.name}
        </a>
      ),
    },
    { key: 'plan', head: heads.plan, cell: planCell },
    { key: 'hottest', head: heads.hottest, cell: hottest, align: 'right' },
    { key: 'version', head: heads.version, cell: (schedule) => String(schedule.version), align: 'right' },
    { key: 'actions', head: heads.actions, cell: actions },
  ];
}

function planCell({ segments, displayUnit }: Schedule) {
  return (
    <ol class="plan-lines">
      {segments.map((segment, index) => (
        <li key={`${index}-${segment.kind}`}>
          {segmentName(segment, displayUnit)}{' '}
          <span class="plan-terms">{segmentTerms(segment, displayUnit)}</span>
        </li>
      ))}
    </ol>
  );
}

function hottest({ segments, displayUnit }: Schedule): string {
  return temperature(Math.max(...segments.map((segment) => segment.targetCelsius)), displayUnit);
}
