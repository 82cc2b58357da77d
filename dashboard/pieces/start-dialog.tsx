import { useState } from 'preact/hooks';
import type { PlanCheck } from '../../hub/contract/planning.ts';
import type { DisplayUnit, Schedule } from '../../hub/contract/schedule.ts';
import { Button } from '../parts/button.tsx';
import { CheckField } from '../parts/check-field.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { navigate } from '../router.ts';
import { useShell } from '../shell.ts';
import { startWords } from '../words/bench.ts';
import { HEAT_WORDS } from '../words/pieces.ts';
import { type KnownBatch, loadOf, marksOf } from './batch.ts';
import { burningFurnaces } from './burning.ts';
import { PlanFaults } from './plan-faults.tsx';
import { Lines } from './proposed-plan.tsx';

interface StartDialogProps {
  readonly known: KnownBatch;
  readonly furnaceId: string;
  readonly schedules: readonly Schedule[];
  readonly unit: DisplayUnit;
  readonly onClose: () => void;
}

/** Holds a schedule against the pieces of a batch, shows what speaks against it, and starts when the smith says so. */
export function StartDialog({ known, furnaceId, schedules, unit, onClose }: StartDialogProps) {
  const { api, feed } = useShell();
  const [scheduleId, setScheduleId] = useState(known.batch.scheduleId ?? '');
  const state = feed.state.value;
  const furnace = state?.furnaces.get(furnaceId)?.name ?? furnaceId;
  const isBusy = burningFurnaces(state).has(furnaceId);
  const { answer } = useAnswer<PlanCheck | null>(scheduleId, () =>
    scheduleId === ''
      ? Promise.resolve(null)
      : api.pieces.checkPlan({ furnaceId, scheduleId, pieces: loadOf(known) }),
  );
  return (
    <Dialog
      title={startWords.title(HEAT_WORDS[known.batch.step], furnace)}
      onClose={onClose}
      closeWord={startWords.cancel}
    >
      <div class="form">
        <p>
          {startWords.pieces}: <strong>{marksOf(known)}</strong>
        </p>
        <SelectField
          label={startWords.schedule}
          value={scheduleId}
          options={[
            { value: '', label: startWords.pick },
            ...schedules.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={setScheduleId}
          hint={scheduleId === '' ? startWords.pickFirst : undefined}
        />
        {answer.state === 'waiting' && <p role="status">{startWords.checking}</p>}
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {isBusy && <p class="piece-caution">{startWords.busy}</p>}
        {answer.state === 'here' && answer.value !== null && (
          <Checked
            key={scheduleId}
            check={answer.value}
            isBusy={isBusy}
            unit={unit}
            start={() => api.startFiring({ furnaceId, scheduleId, pieces: loadOf(known) })}
          />
        )}
      </div>
    </Dialog>
  );
}

interface CheckedProps {
  readonly check: PlanCheck;
  readonly isBusy: boolean;
  readonly unit: DisplayUnit;
  readonly start: () => Promise<unknown>;
}

function Checked({ check, isBusy, unit, start }: CheckedProps) {
  const [isSure, setSure] = useState(check.faults.length === 0);
  const press = useAction();
  const go = () =>
    press.run(async () => {
      await start();
      navigate({ view: 'wall' });
    });
  return (
    <>
      <PlanFaults faults={check.faults} unit={unit} />
      <Lines title={startWords.checked} lines={check.checked} />
      <Lines title={startWords.notChecked} lines={check.notChecked} />
      {check.faults.length > 0 && <CheckField label={startWords.sure} checked={isSure} onChange={setSure} />}
      <ProblemNote error={press.error} />
      <div class="form-acts">
        <Button tone="main" size="wall" disabled={!isSure || isBusy} busy={press.busy} onPress={go}>
          {startWords.start}
        </Button>
      </div>
    </>
  );
}
