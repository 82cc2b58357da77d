import type { Alarm } from '../../hub/contract/alarm.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { whoIsHere } from '../pieces/who.ts';
import { FormFrame } from '../setup/form-frame.tsx';
import { useTextForm } from '../setup/use-text-form.ts';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';
import {
  type AsideOrder,
  type AsideTexts,
  type AsideWay,
  asideTexts,
  checkAside,
  SHELF_MINUTES,
} from './set-aside-form.ts';
import { WhoWhyFields } from './who-why-fields.tsx';

const NAMES: Readonly<Record<string, string>> = {
  minutes: alarmWords.minutes,
  by: alarmWords.by,
  why: alarmWords.why,
};
const WAYS: readonly { readonly value: AsideWay; readonly label: string }[] = [
  { value: 'shelve', label: alarmWords.shelve },
  { value: 'take-out', label: alarmWords.takeOut },
];
const MINUTES = SHELF_MINUTES.map((minutes) => ({ value: String(minutes), label: minutesLabel(minutes) }));

function minutesLabel(minutes: number): string {
  return minutes < 60 ? alarmWords.minutesUnit(minutes) : alarmWords.hoursUnit(minutes / 60);
}

interface DialogProps {
  readonly alarm: Alarm;
  readonly onClose: () => void;
}

/** Shelve or take out of service: who, why, and for a shelf how long. What the hub refuses is said in here. */
export function SetAsideDialog({ alarm, onClose }: DialogProps) {
  const { api } = useShell();
  const press = useAction();
  const { texts, set, fault, listed, submit } = useTextForm<AsideTexts, AsideOrder>(
    asideTexts(whoIsHere.value),
    checkAside,
  );
  const send = (order: AsideOrder) =>
    press.run(async () => {
      whoIsHere.value = order.body.by;
      if (order.way === 'shelve') await api.alarms.shelve(alarm.id, order.body);
      else await api.alarms.takeOut(alarm.id, order.body);
      onClose();
    });
  return (
    <Dialog title={alarmWords.putAsideTitle(alarm.title)} onClose={onClose} closeWord={alarmWords.cancel}>
      <FormFrame
        onSubmit={(event) => submit(event, send)}
        press={press}
        listed={listed}
        nameOf={(path) => NAMES[path] ?? path}
        send={texts.way === 'shelve' ? alarmWords.shelveDo : alarmWords.takeOutDo}
      >
        <SelectField<AsideWay>
          label={alarmWords.whichWay}
          value={texts.way}
          options={WAYS}
          onChange={(way) => set({ way })}
        />
        {texts.way === 'shelve' && (
          <SelectField
            label={alarmWords.minutes}
            value={texts.minutes}
            options={MINUTES}
            onChange={(minutes) => set({ minutes })}
            error={fault('minutes')}
          />
        )}
        <WhoWhyFields texts={texts} set={set} fault={fault} whyLabel={alarmWords.why} />
      </FormFrame>
    </Dialog>
  );
}
