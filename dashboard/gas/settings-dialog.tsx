import { useState } from 'preact/hooks';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { shownUnit, unitNamed } from '../words/format.ts';
import { gasWords } from '../words/gas.ts';

type Given = Pick<
  ShopSettings,
  | 'gasPricePerKilogram'
  | 'currency'
  | 'gasCylinderKilograms'
  | 'gasCylinders'
  | 'gasTareKilograms'
  | 'closingTime'
  | 'timeZone'
>;

interface SettingsProps {
  readonly settings: ShopSettings;
  readonly onClose: () => void;
}

/** Cylinders, price and closing time of the shop. */
export function GasSettingsDialog({ settings, onClose }: SettingsProps) {
  const { api } = useShell();
  const press = useAction();
  const [given, setGiven] = useState<Given>(() => gasOf(settings));
  const set = (more: Partial<Given>) => setGiven((before) => ({ ...before, ...more }));
  const mass = { unit: shownUnit('mass', settings), meaning: 'difference', optional: true } as const;
  const plain = { unit: { ...unitNamed('kg'), label: '' }, meaning: 'difference', optional: true } as const;
  const text = (value: string | null) => value ?? '';
  return (
    <Dialog title={gasWords.settingsTitle} onClose={onClose} closeWord={gasWords.cancel}>
      <form
        class="form"
        onSubmit={(event) => {
          event.preventDefault();
          press.run(async () => {
            await api.setup.changeSettings(given);
            onClose();
          });
        }}
      >
        <div class="form-row">
          <NumberField
            label={gasWords.cylinderKilograms}
            value={given.gasCylinderKilograms}
            rule={{ ...mass, low: 1, high: 60 }}
            onChange={(gasCylinderKilograms) => set({ gasCylinderKilograms })}
          />
          <NumberField
            label={gasWords.cylinders}
            value={given.gasCylinders}
            rule={{ ...plain, low: 1, high: 50 }}
            onChange={(count) => set({ gasCylinders: Math.round(count ?? 1) })}
          />
        </div>
        <NumberField
          label={gasWords.tare}
          hint={gasWords.tareHint}
          value={given.gasTareKilograms}
          rule={{ ...mass, low: 0, high: 1000 }}
          onChange={(gasTareKilograms) => set({ gasTareKilograms })}
        />
        <div class="form-row">
          <NumberField
            label={`${gasWords.price} / kg`}
            value={given.gasPricePerKilogram}
            rule={{ ...plain, low: 0, high: 1000 }}
            onChange={(gasPricePerKilogram) => set({ gasPricePerKilogram })}
          />
          <TextField
            label={gasWords.currency}
            hint={gasWords.currencyHint}
            value={given.currency}
            maxLength={8}
            onChange={(currency) => set({ currency })}
          />
        </div>
        <div class="form-row">
          <TextField
            label={gasWords.closing}
            hint={gasWords.closingHint}
            value={text(given.closingTime)}
            maxLength={5}
            onChange={(typed) => set({ closingTime: typed.trim() === '' ? null : typed.trim() })}
          />
          <TextField
            label={gasWords.zone}
            hint={gasWords.zoneHint}
            value={text(given.timeZone)}
            maxLength={64}
            onChange={(typed) => set({ timeZone: typed.trim() === '' ? null : typed.trim() })}
          />
        </div>
        <ProblemNote error={press.error} />
        <div class="form-acts">
          <Button type="submit" tone="main" busy={press.busy}>
            {gasWords.save}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

function gasOf(settings: ShopSettings): Given {
  const { gasPricePerKilogram, currency, gasCylinderKilograms, gasCylinders } = settings;
  const { gasTareKilograms, closingTime, timeZone } = settings;
  return {
    gasPricePerKilogram,
    currency,
    gasCylinderKilograms,
    gasCylinders,
    gasTareKilograms,
    closingTime,
    timeZone,
  };
}
