import type { OwnSteel } from '../../hub/contract/own-steel.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { setupWords } from '../words/setup.ts';
import { ownSteelWords } from '../words/setup-steels.ts';
import { FormFrame } from './form-frame.tsx';
import { PercentFields } from './percent-fields.tsx';
import { checkSteel, type SteelTexts, type SteelValue, steelTexts } from './steel-form.ts';
import { steelFieldName } from './steel-names.ts';
import { useTextForm } from './use-text-form.ts';
import { WindowFields } from './window-fields.tsx';

interface SteelDialogProps {
  /** Id and name of the steel to change; null: a new one. */
  readonly steel: { readonly id: string; readonly title: string } | null;
  readonly unit: DisplayUnit;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function SteelDialog({ steel, unit, onClose, onDone }: SteelDialogProps) {
  const done = () => {
    onDone();
    onClose();
  };
  return (
    <Dialog
      title={steel ? ownSteelWords.edit(steel.title) : ownSteelWords.add}
      onClose={onClose}
      closeWord={setupWords.cancel}
    >
      {steel ? (
        <KnownSteelForm id={steel.id} unit={unit} onDone={done} />
      ) : (
        <SteelForm steel={null} unit={unit} onDone={done} />
      )}
    </Dialog>
  );
}

interface FormProps {
  readonly unit: DisplayUnit;
  readonly onDone: () => void;
}

/** The list knows what a steel comes to; the form wants what was entered. */
function KnownSteelForm({ id, unit, onDone }: FormProps & { readonly id: string }) {
  const { api } = useShell();
  const { answer } = useAnswer(id, () => api.compute.steel(id));
  switch (answer.state) {
    case 'waiting':
      return <p role="status">{setupWords.asking}</p>;
    case 'failed':
      return <ProblemNote error={answer.error} />;
    case 'here':
      return <SteelForm steel={answer.value.own} unit={unit} onDone={onDone} />;
    default:
      return answer satisfies never;
  }
}

function SteelForm({ steel, unit, onDone }: FormProps & { readonly steel: OwnSteel | null }) {
  const { api } = useShell();
  const press = useAction();
  const form = useTextForm<SteelTexts, SteelValue>(steelTexts(steel, unit), (texts) =>
    checkSteel(texts, unit),
  );
  const { texts, set, fault } = form;
  const send = (value: SteelValue) =>
    press.run(async () => {
      if (steel) await api.steels.change(steel.id, value);
      else await api.steels.create(value);
      onDone();
    });
  return (
    <FormFrame
      onSubmit={(event) => form.submit(event, send)}
      press={press}
      listed={form.listed}
      nameOf={steelFieldName}
      send={steel ? setupWords.save : ownSteelWords.addThis}
    >
      <TextField
        label={ownSteelWords.name}
        hint={ownSteelWords.nameHint}
        value={texts.name}
        onChange={(name) => set({ name })}
        maxLength={64}
        error={fault('name')}
      />
      <PercentFields
        texts={texts.percents}
        onChange={(percents) => set({ percents })}
        fault={fault}
        refusal={press.error}
      />
      <WindowFields
        windows={texts.windows}
        onChange={(windows) => set({ windows })}
        fault={fault}
        unit={unit}
      />
      <TextField
        label={ownSteelWords.note}
        value={texts.note}
        onChange={(note) => set({ note })}
        rows={2}
        maxLength={2000}
        error={fault('note')}
      />
    </FormFrame>
  );
}
