import { type Alarm, ReturnToServiceRequest } from '../../hub/contract/alarm.ts';
import { Dialog } from '../parts/dialog.tsx';
import { faultsOf, missing } from '../parts/faults.ts';
import { useAction } from '../parts/use-action.ts';
import { whoIsHere } from '../pieces/who.ts';
import { FormFrame } from '../setup/form-frame.tsx';
import { type Checked, useTextForm } from '../setup/use-text-form.ts';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';
import { WhoWhyFields } from './who-why-fields.tsx';

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
        <WhoWhyFields texts={texts} set={set} fault={fault} whyLabel={alarmWords.whyBack} />
      </FormFrame>
    </Dialog>
  );
}
