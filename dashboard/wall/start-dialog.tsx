import { useState } from 'preact/hooks';
import type { Schedule } from '../../hub/contract/schedule.ts';
import type { Furnace } from '../../hub/contract/shop.ts';
import { PlanPreview } from '../charts/plan-preview.tsx';
import { Button, LinkButton } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo, NEW_SCHEDULE } from '../router.ts';
import { useShell } from '../shell.ts';
import { wallWords } from '../words/wall.ts';
import { heatsDue, loadOf, meantFor, toggled } from './start-load.ts';
import { PieceChoice, StartFaults } from './start-pieces.tsx';
import { WallDialog } from './wall-dialog.tsx';

interface StartProps {
  readonly furnace: Furnace;
  readonly onClose: () => void;
}

/** Furnace, schedule, Start: the furnace was the first press, so two are left. */
export function StartDialog({ furnace, onClose }: StartProps) {
  const [chosen, setChosen] = useState<Schedule | null>(null);
  const title = chosen ? wallWords.startCheck(chosen.name) : wallWords.startTitle(furnace.name);
  return (
    <WallDialog title={title} onClose={onClose}>
      {chosen ? (
        <CheckAndStart
          furnace={furnace}
          schedule={chosen}
          onOther={() => setChosen(null)}
          onStarted={onClose}
        />
      ) : (
        <ChooseSchedule onChoose={setChosen} />
      )}
    </WallDialog>
  );
}

function ChooseSchedule({ onChoose }: { readonly onChoose: (schedule: Schedule) => void }) {
  const { api } = useShell();
  const { answer } = useAnswer('schedules', () => api.listSchedules());
  if (answer.state === 'waiting') return <p>{wallWords.asking}</p>;
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  if (answer.value.length === 0) {
    return (
      <p class="steps-message">
        {wallWords.noSchedules}{' '}
        <LinkButton size="wall" href={hrefTo({ view: 'schedule', id: NEW_SCHEDULE })}>
          {wallWords.writeSchedule}
        </LinkButton>
      </p>
    );
  }
  return (
    <ul class="schedule-choice">
      {answer.value.map((schedule) => (
        <li key={schedule.id}>
          <Button size="wall" onPress={() => onChoose(schedule)}>
            {schedule.name}
          </Button>
        </li>
      ))}
    </ul>
  );
}

interface CheckProps {
  readonly furnace: Furnace;
  readonly schedule: Schedule;
  readonly onOther: () => void;
  readonly onStarted: () => void;
}

function CheckAndStart({ furnace, schedule, onOther, onStarted }: CheckProps) {
  const { api } = useShell();
  const press = useAction();
  // Without the bench list a firing starts as it always did: with no piece named.
  const { answer } = useAnswer('bench', () => api.pieces.bench());
  const bench = answer.state === 'here' ? answer.value : null;
  const [picked, setPicked] = useState<ReadonlySet<string> | null>(null);
  const due = bench === null ? [] : heatsDue(bench, schedule);
  const chosen = picked ?? (bench === null ? new Set<string>() : meantFor(bench, schedule));
  const pieces = loadOf(due, chosen);
  const plan = useAnswer(pieces.map(({ pieceId }) => pieceId).join(' '), () =>
    api.pieces.checkPlan({ furnaceId: furnace.id, scheduleId: schedule.id, pieces }),
  );
  const faults = plan.answer.state === 'here' ? plan.answer.value.faults : [];
  const start = () =>
    press.run(async () => {
      await api.startFiring({ furnaceId: furnace.id, scheduleId: schedule.id, pieces });
      onStarted();
    });
  return (
    <>
      <PlanPreview name={schedule.name} segments={schedule.segments} unit={schedule.displayUnit} />
      <PieceChoice due={due} chosen={chosen} onToggle={(id) => setPicked(toggled(chosen, id))} />
      <StartFaults faults={faults} />
      <ProblemNote error={press.error} />
      <div class="dialog-acts">
        <Button size="wall" tone="main" busy={press.busy} onPress={start}>
          {faults.length > 0 ? wallWords.startAnyway : wallWords.start}
        </Button>
        <Button size="wall" onPress={onOther}>
          {wallWords.otherSchedule}
        </Button>
      </div>
    </>
  );
}
