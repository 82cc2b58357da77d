import { useRef, useState } from 'preact/hooks';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { setupWords } from '../words/setup.ts';
import { AIR_FIELD_NAMES, AirFields } from './air-fields.tsx';
import { FormFrame } from './form-frame.tsx';
import { AirLimits, FiringLimits, limitFieldName, ScreenSize, ShopUnits } from './limit-fields.tsx';
import { changedSettings, checkSettings, type SettingsTexts, settingsTexts } from './settings-form.ts';
import { useTextForm } from './use-text-form.ts';

/** Limits of the alarms, the shop's units, the wall screen: one form, checked as a whole. */
export function Limits({ state }: { readonly state: FeedState }) {
  const { api } = useShell();
  const press = useAction();
  const [said, setSaid] = useState('');
  // As the form was filled in, and as it was last saved: the feed may bring others' changes meanwhile.
  const before = useRef(state.shop.settings);
  const form = useTextForm<SettingsTexts, ShopSettings>(settingsTexts(state.shop.settings), checkSettings);
  const send = (settings: ShopSettings) => {
    setSaid('');
    press.run(async () => {
      await api.setup.changeSettings(changedSettings(before.current, settings));
      before.current = settings;
      setSaid(setupWords.saved);
    });
  };
  return (
    <div class="form-narrow">
      <FormFrame
        onSubmit={(event) => form.submit(event, send)}
        press={press}
        listed={form.listed}
        nameOf={(path) => AIR_FIELD_NAMES[path] ?? limitFieldName(path)}
        send={setupWords.save}
        said={said}
      >
        <AirLimits form={form} />
        <AirFields
          texts={form.texts.air}
          set={(change) => form.set({ air: { ...form.texts.air, ...change } })}
          fault={form.fault}
        />
        <FiringLimits form={form} />
        <ShopUnits form={form} />
        <ScreenSize form={form} />
      </FormFrame>
    </div>
  );
}
