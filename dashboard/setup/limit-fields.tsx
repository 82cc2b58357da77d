import type { ComponentChildren } from 'preact';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { unitNamed } from '../words/format.ts';
import { limitWords } from '../words/setup.ts';
import { inDisplayUnit, type SettingsTexts } from './settings-form.ts';
import { UnitField } from './unit-field.tsx';
import type { TextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  name: limitWords.name,
  carbonMonoxideFirstPpm: limitWords.first,
  carbonMonoxideSecondPpm: limitWords.second,
  hotAboveCelsius: limitWords.hot,
  overshootAheadSeconds: limitWords.ahead,
  soakStalledSeconds: limitWords.soakStalled,
  rampStalledSeconds: limitWords.rampStalled,
  screenDiagonalInches: limitWords.diagonal,
  viewingDistanceMetres: limitWords.distance,
};

export function limitFieldName(path: string): string {
  return NAMES[path] ?? path;
}

interface FieldsProps {
  readonly form: Pick<TextForm<SettingsTexts, unknown>, 'texts' | 'set' | 'fault'>;
}

function Group({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <fieldset class="group">
      <legend>{title}</legend>
      {children}
    </fieldset>
  );
}

export function AirLimits({ form: { texts, set, fault } }: FieldsProps) {
  return (
    <Group title={limitWords.co}>
      <p class="aside">{limitWords.coNote}</p>
      <div class="form-row">
        <UnitField
          label={limitWords.first}
          value={texts.first}
          unit="ppm"
          onChange={(first) => set({ first })}
          error={fault('carbonMonoxideFirstPpm')}
        />
        <UnitField
          label={limitWords.second}
          value={texts.second}
          unit="ppm"
          onChange={(second) => set({ second })}
          error={fault('carbonMonoxideSecondPpm')}
        />
      </div>
      <SelectField<ShopSettings['watchCarbonMonoxideFor']>
        label={limitWords.watchFor}
        value={texts.watchCarbonMonoxideFor}
        options={(['any-furnace', 'fuel-burning'] as const).map((value) => ({
          value,
          label: limitWords.watchForOptions[value],
        }))}
        onChange={(watchCarbonMonoxideFor) => set({ watchCarbonMonoxideFor })}
      />
    </Group>
  );
}

export function FiringLimits({ form: { texts, set, fault } }: FieldsProps) {
  return (
    <Group title={limitWords.firings}>
      <UnitField
        label={limitWords.hot}
        value={texts.hot}
        unit={unitNamed(texts.displayUnit).label}
        onChange={(hot) => set({ hot })}
        error={fault('hotAboveCelsius')}
      />
      <UnitField
        label={limitWords.ahead}
        hint={limitWords.durationHint}
        value={texts.ahead}
        unit=""
        onChange={(ahead) => set({ ahead })}
        error={fault('overshootAheadSeconds')}
      />
      <UnitField
        label={limitWords.soakStalled}
        hint={limitWords.durationHint}
        value={texts.soakStalled}
        unit=""
        onChange={(soakStalled) => set({ soakStalled })}
        error={fault('soakStalledSeconds')}
      />
      <UnitField
        label={limitWords.rampStalled}
        hint={limitWords.durationHint}
        value={texts.rampStalled}
        unit=""
        onChange={(rampStalled) => set({ rampStalled })}
        error={fault('rampStalledSeconds')}
      />
    </Group>
  );
}

function unitOptions<T extends string>(codes: readonly T[]) {
  return codes.map((value) => ({ value, label: unitNamed(value).label }));
}

export function ShopUnits({ form: { texts, set, fault } }: FieldsProps) {
  return (
    <Group title={limitWords.shop}>
      <TextField
        label={limitWords.name}
        value={texts.name}
        onChange={(name) => set({ name })}
        maxLength={80}
        error={fault('name')}
      />
      <div class="form-row">
        <SelectField<DisplayUnit>
          label={limitWords.temperatureUnit}
          value={texts.displayUnit}
          options={unitOptions(['Cel', '[degF]'])}
          onChange={(unit) => set(inDisplayUnit(texts, unit))}
        />
        <SelectField<ShopSettings['pressureUnit']>
          label={limitWords.pressureUnit}
          value={texts.pressureUnit}
          options={unitOptions(['bar', 'mbar', 'kPa', '[psi]', "[in_i'H2O]"])}
          onChange={(pressureUnit) => set({ pressureUnit })}
        />
        <SelectField<ShopSettings['massUnit']>
          label={limitWords.massUnit}
          value={texts.massUnit}
          options={unitOptions(['kg', '[lb_av]'])}
          onChange={(massUnit) => set({ massUnit })}
        />
      </div>
    </Group>
  );
}

export function ScreenSize({ form: { texts, set, fault } }: FieldsProps) {
  return (
    <Group title={limitWords.screen}>
      <p class="aside">{limitWords.screenNote}</p>
      <div class="form-row">
        <UnitField
          label={limitWords.diagonal}
          value={texts.diagonal}
          unit={limitWords.inches}
          onChange={(diagonal) => set({ diagonal })}
          error={fault('screenDiagonalInches')}
        />
        <UnitField
          label={limitWords.distance}
          value={texts.distance}
          unit={limitWords.metres}
          onChange={(distance) => set({ distance })}
          error={fault('viewingDistanceMetres')}
        />
      </div>
    </Group>
  );
}
