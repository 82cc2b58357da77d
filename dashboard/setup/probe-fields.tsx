import { PROBE_CONSTRUCTIONS, THERMOCOUPLE_TYPES, TOLERANCE_CLASSES } from '../../hub/contract/probe.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { SelectField } from '../parts/field.tsx';
import { unitNamed } from '../words/format.ts';
import { CONSTRUCTION_WORDS, probeWords, TOLERANCE_WORDS } from '../words/setup-probe.ts';
import type { ProbeTexts } from './probe-form.ts';
import { UnitField } from './unit-field.tsx';

export interface ProbeFieldsProps {
  readonly texts: ProbeTexts;
  readonly set: (change: Partial<ProbeTexts>) => void;
  /** The fault at a path under "probe", the form's own or the hub's. */
  readonly fault: (path: string) => string | undefined;
}

/** What the thermocouple is: type, class, build, size. */
export function ProbeFields({ texts, set, fault }: ProbeFieldsProps) {
  return (
    <>
      <SelectField<ProbeTexts['type']>
        label={probeWords.type}
        value={texts.type}
        options={[
          { value: '', label: probeWords.noType },
          ...THERMOCOUPLE_TYPES.map((value) => ({ value, label: probeWords.typeName(value) })),
        ]}
        onChange={(type) => set({ type })}
        error={fault('type') ?? fault('')}
      />
      {texts.type !== '' && (
        <>
          <SelectField<ProbeTexts['tolerance']>
            label={probeWords.tolerance}
            value={texts.tolerance}
            options={[
              { value: '', label: probeWords.unknown },
              ...TOLERANCE_CLASSES.map((value) => ({ value, label: TOLERANCE_WORDS[value] })),
            ]}
            onChange={(tolerance) => set({ tolerance })}
            error={fault('tolerance')}
          />
          <SelectField<ProbeTexts['construction']>
            label={probeWords.construction}
            value={texts.construction}
            options={[
              { value: '', label: probeWords.unknown },
              ...PROBE_CONSTRUCTIONS.map((value) => ({ value, label: CONSTRUCTION_WORDS[value] })),
            ]}
            onChange={(construction) => set({ construction })}
            error={fault('construction')}
          />
          <UnitField
            label={probeWords.size}
            unit={probeWords.millimetres}
            value={texts.millimetres}
            onChange={(millimetres) => set({ millimetres })}
            error={fault('millimetres')}
          />
        </>
      )}
    </>
  );
}

/** What its device and its calibration add. */
export function ProbeFigures({ texts, set, fault, unit }: ProbeFieldsProps & { readonly unit: DisplayUnit }) {
  const { label } = unitNamed(unit);
  return (
    <>
      <UnitField
        label={probeWords.step}
        hint={probeWords.stepHint}
        unit={label}
        value={texts.step}
        onChange={(step) => set({ step })}
        error={fault('digitiserStepCelsius')}
      />
      <div class="form-row">
        <UnitField
          label={probeWords.offset}
          hint={probeWords.offsetHint}
          unit={label}
          value={texts.offset}
          onChange={(offset) => set({ offset })}
          error={fault('correction.offsetCelsius')}
        />
        <UnitField
          label={probeWords.uncertainty}
          hint={probeWords.uncertaintyHint}
          unit={label}
          value={texts.uncertainty}
          onChange={(uncertainty) => set({ uncertainty })}
          error={fault('correction.standardUncertaintyCelsius')}
        />
      </div>
    </>
  );
}
