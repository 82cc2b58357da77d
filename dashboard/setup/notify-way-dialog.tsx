import type { NotifyWay, NotifyWayDraft } from '../../hub/contract/notify.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { notifyWords, WAY_KIND_WORDS } from '../words/notify.ts';
import { setupWords } from '../words/setup.ts';
import { FormFrame } from './form-frame.tsx';
import { refusedAt } from './notify-refused.ts';
import { RuleFields } from './notify-rule-fields.tsx';
import { MailFields, WebhookFields } from './notify-target-fields.tsx';
import { checkWay, type WayKind, type WayTexts, wayTexts } from './notify-way-form.ts';
import { useTextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  name: notifyWords.name,
  'target.host': notifyWords.host,
  'target.port': notifyWords.port,
  'target.user': notifyWords.user,
  'target.password': notifyWords.password,
  'target.from': notifyWords.from,
  'target.to': notifyWords.recipients,
  'target.url': notifyWords.url,
  'target.secret': notifyWords.secret,
  'rule.hours.days': notifyWords.days,
  'rule.hours.from': notifyWords.hoursFrom,
  'rule.hours.to': notifyWords.hoursTo,
  'rule.afterMinutes': notifyWords.after,
  'rule.repeatMinutes': notifyWords.repeat,
};

interface WayDialogProps {
  /** Null: a new one. */
  readonly way: NotifyWay | null;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function WayDialog({ way, onClose, onDone }: WayDialogProps) {
  const { api } = useShell();
  const press = useAction();
  const form = useTextForm<WayTexts, NotifyWayDraft>(wayTexts(way), checkWay);
  const { texts, set } = form;
  const fault = (path: string) => form.fault(path) ?? refusedAt(press.error, path);
  const send = (value: NotifyWayDraft) =>
    press.run(async () => {
      if (way === null) await api.notify.createWay(value);
      else await api.notify.changeWay(way.id, value);
      onDone();
      onClose();
    });
  return (
    <Dialog
      title={way === null ? notifyWords.add : notifyWords.edit(way.name)}
      onClose={onClose}
      closeWord={setupWords.cancel}
    >
      <FormFrame
        onSubmit={(event) => form.submit(event, send)}
        press={press}
        listed={form.listed}
        nameOf={(path) => NAMES[path] ?? path}
        send={way === null ? notifyWords.addThis : setupWords.save}
      >
        {way === null && (
          <SelectField<WayKind>
            label={notifyWords.kind}
            value={texts.kind}
            options={(['e-mail', 'webhook'] as const).map((value) => ({
              value,
              label: WAY_KIND_WORDS[value],
            }))}
            onChange={(kind) => set({ kind })}
          />
        )}
        <TextField
          label={notifyWords.name}
          hint={notifyWords.nameHint}
          value={texts.name}
          onChange={(name) => set({ name })}
          maxLength={80}
          error={fault('name')}
        />
        {texts.kind === 'e-mail' && <MailFields way={way} texts={texts} set={set} fault={fault} />}
        {texts.kind === 'webhook' && <WebhookFields way={way} texts={texts} set={set} fault={fault} />}
        <RuleFields texts={texts} set={set} fault={fault} />
      </FormFrame>
    </Dialog>
  );
}
