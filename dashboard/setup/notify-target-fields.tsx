import type { NotifyWay } from '../../hub/contract/notify.ts';
import { Field, SelectField, TextField } from '../parts/field.tsx';
import { notifyWords } from '../words/notify.ts';
import type { WayTexts } from './notify-way-form.ts';

interface TargetFieldsProps {
  readonly way: NotifyWay | null;
  readonly texts: WayTexts;
  readonly set: (change: Partial<WayTexts>) => void;
  readonly fault: (path: string) => string | undefined;
}

interface HiddenFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly error: string | undefined;
}

/** What is typed is not shown, and no browser offers a password of another page. */
function HiddenField({ label, hint, value, onChange, error }: HiddenFieldProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <input
          {...ids}
          type="password"
          autocomplete="new-password"
          value={value}
          onInput={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

/** Server, sign-in and addresses of a mail. */
export function MailFields({ way, texts, set, fault }: TargetFieldsProps) {
  const isKept = way?.target.kind === 'e-mail' && way.target.hasPassword;
  return (
    <>
      <TextField
        label={notifyWords.host}
        hint={notifyWords.hostHint}
        value={texts.host}
        onChange={(host) => set({ host })}
        error={fault('target.host')}
      />
      <div class="form-row">
        <SelectField<WayTexts['security']>
          label={notifyWords.security}
          value={texts.security}
          options={(['tls', 'starttls', 'none'] as const).map((value) => ({
            value,
            label: notifyWords.securityOptions[value],
          }))}
          onChange={(security) => set({ security })}
          error={fault('target.security')}
        />
        <TextField
          label={notifyWords.port}
          value={texts.port}
          onChange={(port) => set({ port })}
          error={fault('target.port')}
        />
      </div>
      <div class="form-row">
        <TextField
          label={notifyWords.user}
          hint={notifyWords.userHint}
          value={texts.user}
          onChange={(user) => set({ user })}
          error={fault('target.user')}
        />
        <HiddenField
          label={notifyWords.password}
          hint={isKept ? notifyWords.passwordKept : notifyWords.passwordHint}
          value={texts.password}
          onChange={(password) => set({ password })}
          error={fault('target.password')}
        />
      </div>
      <TextField
        label={notifyWords.from}
        value={texts.from}
        onChange={(from) => set({ from })}
        error={fault('target.from')}
      />
      <TextField
        label={notifyWords.recipients}
        hint={notifyWords.recipientsHint}
        value={texts.to}
        onChange={(to) => set({ to })}
        rows={2}
        error={fault('target.to')}
      />
    </>
  );
}

/** Address and secret of a webhook. */
export function WebhookFields({ way, texts, set, fault }: TargetFieldsProps) {
  const origin = way?.target.kind === 'webhook' ? way.target.origin : null;
  return (
    <>
      <TextField
        label={notifyWords.url}
        hint={origin === null ? notifyWords.urlHint : notifyWords.urlKept(origin)}
        value={texts.url}
        onChange={(url) => set({ url })}
        maxLength={1000}
        error={fault('target.url')}
      />
      <HiddenField
        label={notifyWords.secret}
        hint={origin === null ? notifyWords.secretHint : notifyWords.passwordKept}
        value={texts.secret}
        onChange={(secret) => set({ secret })}
        error={fault('target.secret')}
      />
    </>
  );
}
