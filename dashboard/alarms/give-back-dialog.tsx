import { type Alarm, ReturnToServiceRequest } from '../../hub/contract/alarm.ts';
import { Dialog } from '../parts/dialog.tsx';
import { faultsOf, missing } from '../parts/faults.ts';
import { TextField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { whoIsHere } from '../pieces/who.ts';
import { FormFrame } from '../setup/form-frame.tsx';
import { type Checked, useTextForm } from '../setup/use-text-form.ts';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';

interface BackTexts {
  readonly by: string;
  readonly why: string;
}

const NAMES: Readonly<Record<string, string>> = { by: alarmWords.by, why: alarmWords.whyBack };

function checkBack({ by, why }: BackTexts): Checked<BackTexts> {
  const said = { by: by.trim(), why: why.trim() };
  const parsed = ReturnToServiceRequest.safeParse(said);
  if (parsed.success) return { value: parsed.data, faults: {} };
  return { value: null, faults: { ...faultsOf(parsed.error.issues), ...missing({ ...said }) } };
}

interface DialogProps {
  readonly alarm: Alarm;
  readonly onClose: () => void;
}

/** The work is done: who says so, and what was tested. */
export function GiveBackDialog({ alarm, onClose }: DialogProps) {
  const { api } = useShell();
  const press = useAction();
  const { texts, set, fault, listed, submit } = useTextForm<BackTexts, BackTexts>(
    { by: whoIsHere.value, why: '' },
    checkBack,
  );
  const send = (body: BackTexts) =>
    press.run(async () => {
      whoIsHere.value = body.by;
      await api.alarms.giveBack(alarm.id, body);
      onClose();
    });
  return (
    <Dialog title={alarmWords.giveBackTitle(alarm.title)} onClose={onClose} closeWord={alarmWords.cancel}>
      <FormFrame
        onSubmit={(event) => submit(event, send)}
        press={press}
        listed={listed}
        nameOf={(path) => NAMES[path] ?? path}
        send={alarmWords.giveBack}
      >
        <TextField
          label={alarmWords.by}
          value={texts.by}
          onChange={(by) => set({ by })}
          maxLength={80}
          error={fault('by')}
        />
        <TextField
          label={alarmWords.whyBack}
          value={texts.why}
          onChange={(why) => set({ why })}
          maxLength={500}
          rows={2}
          error={fault('why')}
        />
      </FormFrame>
    </Dialog>
  );
}
