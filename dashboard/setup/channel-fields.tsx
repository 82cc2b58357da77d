import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import { CHANNEL_ROLES, type ChannelRole } from '../../hub/contract/shop.ts';
import { BASE_UNIT, QUANTITIES, type Quantity } from '../../hub/contract/units.ts';
import type { FeedState } from '../feed/state.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { airSetupWords } from '../words/air-setup.ts';
import { shownUnit, unitNamed } from '../words/format.ts';
import { channelWords, ROLE_WORDS, setupWords } from '../words/setup.ts';
import { probeWords } from '../words/setup-probe.ts';
import { type ChannelTexts, unitsOf, widestRange } from './channel-form.ts';
import { ProbeGroup } from './probe-group.tsx';
import { SensorDateFields } from './sensor-date-fields.tsx';
import { hasDates } from './sensor-dates.ts';
import { UnitField } from './unit-field.tsx';
import type { TextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  node: channelWords.node,
  name: channelWords.name,
  label: channelWords.label,
  quantity: channelWords.quantity,
  unit: channelWords.unit,
  role: channelWords.role,
  furnaceId: channelWords.furnace,
  possibleLow: channelWords.possibleLow,
  possibleHigh: channelWords.possibleHigh,
  staleAfterSeconds: channelWords.stale,
  calibratedAt: airSetupWords.calibratedAt,
  calibrationDueAt: airSetupWords.calibrationDueAt,
  endOfLifeAt: airSetupWords.endOfLifeAt,
  probe: probeWords.head,
  'probe.type': probeWords.type,
  'probe.tolerance': probeWords.tolerance,
  'probe.construction': probeWords.construction,
  'probe.millimetres': probeWords.size,
  'probe.digitiserStepCelsius': probeWords.step,
  'probe.correction.offsetCelsius': probeWords.offset,
  'probe.correction.standardUncertaintyCelsius': probeWords.uncertainty,
  'probe.source': probeWords.source,
  'probe.source.emfChannel': probeWords.emfChannel,
  'probe.source.coldJunctionChannel': probeWords.junctionChannel,
  'probe.source.slopeMillivoltsPerCelsius': probeWords.slope,
};

export function channelFieldName(path: string): string {
  return NAMES[path] ?? path;
}

export type ChannelForm = Pick<TextForm<ChannelTexts, unknown>, 'texts' | 'set' | 'fault'>;

/** What names a channel; afterwards it stays as it is. */
export function NewChannelFields({ form: { texts, set, fault } }: { readonly form: ChannelForm }) {
  return (
    <>
      <TextField
        label={channelWords.node}
        hint={channelWords.nodeHint}
        value={texts.node}
        onChange={(node) => set({ node })}
        maxLength={64}
        error={fault('node')}
      />
      <TextField
        label={channelWords.name}
        hint={channelWords.nameHint}
        value={texts.name}
        onChange={(name) => set({ name })}
        maxLength={128}
        error={fault('name')}
      />
      <SelectField<Quantity>
        label={channelWords.quantity}
        value={texts.quantity}
        options={QUANTITIES.map((value) => ({ value, label: QUANTITY_FACTS[value].label }))}
        onChange={(quantity) => set({ quantity, unit: '' })}
      />
    </>
  );
}

interface FieldsProps {
  readonly form: ChannelForm;
  readonly state: FeedState;
  readonly isNew: boolean;
  /** What the hub refused last. */
  readonly refusal: unknown;
}

export function ChannelFields({ form, state, isNew, refusal }: FieldsProps) {
  const { texts, set, fault } = form;
  const base = unitNamed(BASE_UNIT[texts.quantity]);
  const roles = CHANNEL_ROLES.map((value) => ({ value, label: ROLE_WORDS[value] }));
  return (
    <>
      <TextField
        label={channelWords.label}
        hint={channelWords.labelHint}
        value={texts.label}
        onChange={(label) => set({ label })}
        maxLength={80}
        error={fault('label')}
      />
      <SelectField<ChannelRole | ''>
        label={channelWords.role}
        value={texts.role}
        options={isNew ? [{ value: '', label: channelWords.roleGuess }, ...roles] : roles}
        onChange={(role) => set({ role })}
        error={fault('role')}
      />
      <SelectField
        label={channelWords.furnace}
        value={texts.furnaceId}
        options={[
          { value: '', label: setupWords.noFurnace },
          ...[...state.furnaces.values()].map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={(furnaceId) => set({ furnaceId })}
      />
      <SelectField
        label={channelWords.unit}
        value={texts.unit}
        options={[
          { value: '', label: channelWords.unitBase(base.label) },
          ...unitsOf(texts.quantity).map((unit) => ({ value: unit.code, label: unit.label })),
        ]}
        onChange={(unit) => set({ unit })}
        error={fault('unit')}
      />
      <LimitFields form={form} state={state} />
      {texts.quantity === 'temperature' && <ProbeGroup form={form} state={state} refusal={refusal} />}
      {hasDates(texts.quantity) && (
        <SensorDateFields
          texts={texts.dates}
          set={(change) => set({ dates: { ...texts.dates, ...change } })}
          fault={fault}
        />
      )}
    </>
  );
}

function LimitFields({ form: { texts, set, fault }, state }: Pick<FieldsProps, 'form' | 'state'>) {
  const { settings } = state.shop;
  const label = shownUnit(texts.quantity, settings).label;
  return (
    <>
      <div class="form-row">
        <UnitField
          label={channelWords.possibleLow}
          value={texts.low}
          unit={label}
          onChange={(low) => set({ low })}
          error={fault('possibleLow')}
        />
        <UnitField
          label={channelWords.possibleHigh}
          value={texts.high}
          unit={label}
          onChange={(high) => set({ high })}
          error={fault('possibleHigh')}
        />
      </div>
      <p class="aside">{channelWords.possibleHint(...widestRange(texts.quantity, settings))}</p>
      <UnitField
        label={channelWords.stale}
        hint={channelWords.staleHint}
        value={texts.stale}
        unit=""
        onChange={(stale) => set({ stale })}
        error={fault('staleAfterSeconds')}
      />
    </>
  );
}
