import { FURNACE_KINDS, type Furnace } from '../../hub/contract/shop.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { unitNamed } from '../words/format.ts';
import { gasWords } from '../words/gas.ts';
import { FURNACE_KIND_WORDS, furnaceWords, setupWords } from '../words/setup.ts';
import { BurnerFields } from './burner-fields.tsx';
import { FormFrame } from './form-frame.tsx';
import { checkFurnace, type FurnaceTexts, type FurnaceValue, furnaceTexts } from './furnace-form.ts';
import { UnitField } from './unit-field.tsx';
import { useTextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  name: furnaceWords.name,
  kind: furnaceWords.kind,
  ratedCelsius: furnaceWords.rated,
  note: furnaceWords.note,
  'gas.boreMm': gasWords.bore,
  'gas.dischargeCoefficient': gasWords.coefficient,
  'gas.burners': gasWords.burners,
  'gas.lowPascals': gasWords.low,
  'gas.highPascals': gasWords.high,
};

interface FurnaceDialogProps {
  /** Null: a new one. */
  readonly furnace: Furnace | null;
  readonly onClose: () => void;
}

export function FurnaceDialog({ furnace, onClose }: FurnaceDialogProps) {
  return (
    <Dialog
      title={furnace ? furnaceWords.edit(furnace.name) : furnaceWords.add}
      onClose={onClose}
      closeWord={setupWords.cancel}
    >
      <FurnaceForm furnace={furnace} onDone={onClose} />
    </Dialog>
  );
}

export function FurnaceForm({ furnace, onDone }: { furnace: Furnace | null; onDone: () => void }) {
  const { api, feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const pressure = feed.state.value?.shop.settings.pressureUnit ?? 'bar';
  const press = useAction();
  const form = useTextForm<FurnaceTexts, FurnaceValue>(furnaceTexts(furnace, unit, pressure), (texts) =>
    checkFurnace(texts, unit, pressure),
  );
  const { texts, set, fault } = form;
  const send = (value: FurnaceValue) =>
    press.run(async () => {
      if (furnace) await api.setup.changeFurnace(furnace.id, value);
      else await api.setup.createFurnace(value);
      onDone();
    });
  return (
    <FormFrame
      onSubmit={(event) => form.submit(event, send)}
      press={press}
      listed={form.listed}
      nameOf={(path) => NAMES[path] ?? path}
      send={furnace ? setupWords.save : furnaceWords.addThis}
    >
      <TextField
        label={furnaceWords.name}
        value={texts.name}
        onChange={(name) => set({ name })}
        maxLength={80}
        error={fault('name')}
      />
      <SelectField<Furnace['kind']>
        label={furnaceWords.kind}
        value={texts.kind}
        options={FURNACE_KINDS.map((value) => ({ value, label: FURNACE_KIND_WORDS[value] }))}
        onChange={(kind) => set({ kind })}
      />
      <UnitField
        label={furnaceWords.rated}
        hint={furnaceWords.ratedHint}
        value={texts.rated}
        unit={unitNamed(unit).label}
        onChange={(rated) => set({ rated })}
        error={fault('ratedCelsius')}
      />
      {texts.kind === 'gas-forge' && (
        <BurnerFields
          texts={texts.burner}
          unit={unitNamed(pressure)}
          set={(more) => set({ burner: { ...texts.burner, ...more } })}
          fault={fault}
        />
      )}
      <TextField
        label={furnaceWords.note}
        value={texts.note}
        onChange={(note) => set({ note })}
        rows={2}
        maxLength={2000}
        error={fault('note')}
      />
    </FormFrame>
  );
}
