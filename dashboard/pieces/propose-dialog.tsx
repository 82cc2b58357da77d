import { useState } from 'preact/hooks';
import type { Proposal } from '../../hub/contract/planning.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Api } from '../api/client.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/field.tsx';
import { readNumber } from '../parts/number-entry.ts';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { UnitField } from '../setup/unit-field.tsx';
import { useShell } from '../shell.ts';
import { proposeWords, startWords } from '../words/bench.ts';
import { HEAT_WORDS } from '../words/pieces.ts';
import { duration } from '../words/time.ts';
import { type KnownBatch, marksOf, namingSchedule } from './batch.ts';
import { PlanFaults } from './plan-faults.tsx';
import { ProposedPlan } from './proposed-plan.tsx';
import { refusedAt } from './refused.ts';

interface ProposeDialogProps {
  readonly known: KnownBatch;
  readonly furnaceId: string;
  readonly unit: DisplayUnit;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** A schedule for a batch, worked out from the steel: to be read, named and kept. */
export function ProposeDialog({ known, furnaceId, unit, onClose, onDone }: ProposeDialogProps) {
  const { api } = useShell();
  const { step } = known.batch;
  const [wanted, setWanted] = useState('');
  const [asked, setAsked] = useState<number | null>(null);
  const { answer } = useAnswer(String(asked), () =>
    api.pieces.propose({
      step,
      furnaceId,
      pieceIds: known.items.map(({ pieceId }) => pieceId),
      ...(asked === null ? {} : { wantedHrc: asked }),
    }),
  );
  const entry = readNumber(wanted);
  const fault = entry.ok ? undefined : entry.message;
  return (
    <Dialog
      title={proposeWords.title(`${HEAT_WORDS[step]}: ${marksOf(known)}`)}
      onClose={onClose}
      closeWord={startWords.cancel}
    >
      <div class="form">
        {step === 'temper' && (
          <div class="form-acts">
            <UnitField
              label={proposeWords.wanted}
              hint={proposeWords.wantedHint}
              value={wanted}
              unit="HRC"
              onChange={setWanted}
              error={fault ?? (answer.state === 'failed' ? refusedAt(answer.error, 'wantedHrc') : undefined)}
            />
            <Button onPress={() => entry.ok && setAsked(entry.value)}>{proposeWords.again}</Button>
          </div>
        )}
        {answer.state === 'waiting' && <p role="status">{proposeWords.asking}</p>}
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {answer.state === 'here' && (
          <KeepForm
            key={asked}
            proposal={answer.value}
            unit={unit}
            keep={(name) => keepSchedule(api, known, answer.value, name)}
            onDone={onDone}
          />
        )}
      </div>
    </Dialog>
  );
}

/** Stores the schedule and has every piece of the batch name it at this step. */
async function keepSchedule(api: Api, known: KnownBatch, { draft }: Proposal, name: string): Promise<void> {
  const { id } = await api.createSchedule({ ...draft, name });
  for (const { pieceId, step } of known.items) {
    const piece = await api.pieces.read(pieceId);
    await api.pieces.change(pieceId, namingSchedule(piece, step.id, id));
  }
}

interface KeepFormProps {
  readonly proposal: Proposal;
  readonly unit: DisplayUnit;
  readonly keep: (name: string) => Promise<void>;
  readonly onDone: () => void;
}

function KeepForm({ proposal, unit, keep, onDone }: KeepFormProps) {
  const [name, setName] = useState(proposal.draft.name);
  const press = useAction();
  const submit = (event: Event) => {
    event.preventDefault();
    press.run(async () => {
      await keep(name);
      onDone();
    });
  };
  return (
    <form class="form" onSubmit={submit} noValidate>
      <PlanFaults faults={proposal.faults} unit={unit} />
      <ProposedPlan draft={proposal.draft} unit={unit} />
      {proposal.expectedSeconds !== null && <p>{proposeWords.takes(duration(proposal.expectedSeconds))}</p>}
      <TextField
        label={proposeWords.name}
        hint={proposeWords.names}
        value={name}
        onChange={setName}
        maxLength={80}
        error={refusedAt(press.error, 'name')}
      />
      <ProblemNote error={press.error} />
      <div class="form-acts">
        <Button type="submit" tone="main" busy={press.busy}>
          {proposeWords.keep}
        </Button>
      </div>
    </form>
  );
}
