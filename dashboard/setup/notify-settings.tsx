import { useState } from 'preact/hooks';
import type { NotifySettings, NotifySettingsPatch } from '../../hub/contract/notify.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { notifySettingsWords as words } from '../words/notify.ts';
import { setupWords } from '../words/setup.ts';
import { FormFrame } from './form-frame.tsx';
import { refusedAt } from './notify-refused.ts';
import { checkShared, type SharedTexts, sharedTexts } from './notify-settings-form.ts';
import { UnitField } from './unit-field.tsx';
import { type TextForm, useTextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  timeZone: words.timeZone,
  contact: words.contact,
  allowedNetworks: words.networks,
  topicPrefix: words.prefix,
  heartbeatSeconds: words.heartbeat,
  pingUrl: words.pingUrl,
  pingEveryMinutes: words.pingEvery,
};

interface SettingsProps {
  readonly settings: NotifySettings;
  readonly onDone: () => void;
}

type Part = Pick<TextForm<SharedTexts, unknown>, 'texts' | 'set' | 'fault'> & {
  readonly settings: NotifySettings;
};

/** Clock, contact, own networks, light and sign of life: one form, checked as a whole. */
export function NotifySettingsForm({ settings, onDone }: SettingsProps) {
  const { api } = useShell();
  const press = useAction();
  const [said, setSaid] = useState('');
  const form = useTextForm<SharedTexts, NotifySettingsPatch>(sharedTexts(settings), checkShared);
  const change = (patch: NotifySettingsPatch) => {
    setSaid('');
    press.run(async () => {
      await api.notify.changeSettings(patch);
      form.set({ pingUrl: '' });
      setSaid(setupWords.saved);
      onDone();
    });
  };
  const fault = (path: string) => form.fault(path) ?? refusedAt(press.error, path);
  const part: Part = { texts: form.texts, set: form.set, fault, settings };
  return (
    <section class="notify-part">
      <h2>{words.title}</h2>
      <FormFrame
        onSubmit={(event) => form.submit(event, change)}
        press={press}
        listed={form.listed}
        nameOf={(path) => NAMES[path] ?? path}
        send={setupWords.save}
        said={said}
      >
        <ShopFields {...part} />
        <LightFields {...part} />
        <PingFields {...part} onStop={() => change({ pingUrl: null })} />
      </FormFrame>
    </section>
  );
}

function ShopFields({ texts, set, fault, settings }: Part) {
  return (
    <>
      <TextField
        label={words.timeZone}
        hint={words.timeZoneHint(settings.timeZoneInUse)}
        value={texts.timeZone}
        onChange={(timeZone) => set({ timeZone })}
        error={fault('timeZone')}
      />
      <TextField
        label={words.contact}
        hint={words.contactHint}
        value={texts.contact}
        onChange={(contact) => set({ contact })}
        error={fault('contact')}
      />
      <TextField
        label={words.networks}
        hint={words.networksHint}
        value={texts.networks}
        onChange={(networks) => set({ networks })}
        rows={2}
        error={fault('allowedNetworks')}
      />
    </>
  );
}

function LightFields({ texts, set, fault, settings }: Part) {
  return (
    <fieldset class="setup-group">
      <legend>{words.light}</legend>
      <TextField
        label={words.prefix}
        hint={words.prefixHint(settings.topicPrefixInUse)}
        value={texts.prefix}
        onChange={(prefix) => set({ prefix })}
        error={fault('topicPrefix')}
      />
      <UnitField
        label={words.heartbeat}
        hint={words.heartbeatHint}
        value={texts.heartbeat}
        unit={words.seconds}
        onChange={(heartbeat) => set({ heartbeat })}
        error={fault('heartbeatSeconds')}
      />
    </fieldset>
  );
}

function PingFields({ texts, set, fault, settings, onStop }: Part & { readonly onStop: () => void }) {
  const { pingOrigin } = settings;
  return (
    <fieldset class="setup-group">
      <legend>{words.ping}</legend>
      <TextField
        label={words.pingUrl}
        hint={pingOrigin === null ? words.pingHint : words.pingKept(pingOrigin)}
        value={texts.pingUrl}
        onChange={(pingUrl) => set({ pingUrl })}
        error={fault('pingUrl')}
      />
      <UnitField
        label={words.pingEvery}
        value={texts.pingEvery}
        unit="min"
        onChange={(pingEvery) => set({ pingEvery })}
        error={fault('pingEveryMinutes')}
      />
      {pingOrigin !== null && (
        <div class="form-acts">
          <Button onPress={onStop}>{words.pingStop}</Button>
        </div>
      )}
    </fieldset>
  );
}
