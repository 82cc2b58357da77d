import './air-fields.css';
import { z } from 'zod';
import { AirView, WORKING_RATES } from '../../hub/contract/air.ts';
import { LIMIT_PROFILES } from '../../hub/contract/compute/exposure.ts';
import { LimitTable } from '../air/limit-table.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { airWords, PROFILE_WORDS, WORK_RATE_WORDS } from '../words/air.ts';
import { airSetupWords } from '../words/air-setup.ts';
import type { AirTexts } from './air-form.ts';
import { UnitField } from './unit-field.tsx';

export const AIR_FIELD_NAMES: Readonly<Record<string, string>> = {
  airProfile: airSetupWords.profile,
  airCustomLimits: airSetupWords.custom,
  'airCustomLimits.twaPpm': airSetupWords.twa,
  'airCustomLimits.stelPpm': airSetupWords.stel,
  'airCustomLimits.ceilingPpm': airSetupWords.ceiling,
  'airCustomLimits.idlhPpm': airSetupWords.idlh,
  'airCustomLimits.source': airSetupWords.source,
  workRate: airSetupWords.workRate,
  roomCubicMetres: airSetupWords.room,
};

const PROFILES = [...LIMIT_PROFILES, 'custom'] as const;

interface AirFieldsProps {
  readonly texts: AirTexts;
  readonly set: (change: Partial<AirTexts>) => void;
  readonly fault: (path: string) => string | undefined;
}

/** Whose limits the day is held against, how hard people work, how big the room is. */
export function AirFields({ texts, set, fault }: AirFieldsProps) {
  return (
    <fieldset class="group">
      <legend>{airSetupWords.group}</legend>
      <p class="aside">{airSetupWords.note}</p>
      <SelectField<AirTexts['profile']>
        label={airSetupWords.profile}
        value={texts.profile}
        options={PROFILES.map((value) => ({ value, label: PROFILE_WORDS[value] }))}
        onChange={(profile) => set({ profile })}
        error={fault('airCustomLimits')}
      />
      {texts.profile === 'custom' ? (
        <CustomFields texts={texts} set={set} fault={fault} />
      ) : (
        <ProfileLimits profile={texts.profile} />
      )}
      <SelectField<AirTexts['workRate']>
        label={airSetupWords.workRate}
        hint={airSetupWords.workRateHint}
        value={texts.workRate}
        options={WORKING_RATES.map((value) => ({ value, label: WORK_RATE_WORDS[value] }))}
        onChange={(workRate) => set({ workRate })}
        error={fault('workRate')}
      />
      <UnitField
        label={airSetupWords.room}
        hint={airSetupWords.roomHint}
        value={texts.room}
        unit="m³"
        onChange={(room) => set({ room })}
        error={fault('roomCubicMetres')}
      />
    </fieldset>
  );
}

const LIMIT_FIELDS = ['twa', 'stel', 'ceiling', 'idlh'] as const;

function CustomFields({ texts, set, fault }: AirFieldsProps) {
  return (
    <>
      <p class="aside">{airSetupWords.empty}</p>
      <div class="form-row">
        {LIMIT_FIELDS.map((field) => (
          <UnitField
            key={field}
            label={airSetupWords[field]}
            value={texts[field]}
            unit="ppm"
            onChange={(text) => set({ [field]: text })}
            error={fault(`airCustomLimits.${field}Ppm`)}
          />
        ))}
      </div>
      <TextField
        label={airSetupWords.source}
        hint={airSetupWords.sourceHint}
        value={texts.source}
        onChange={(source) => set({ source })}
        maxLength={200}
        error={fault('airCustomLimits.source')}
      />
    </>
  );
}

/** Of an answer about exposure only the limits of the profile are wanted. */
const LimitsOnly = z.object({ limits: AirView.shape.limits });
/** The hub tells the limits of a profile with any curve; this one is an instant of nothing. */
const NO_CURVE = [{ at: 0, ppm: 0 }];

function ProfileLimits({ profile }: { readonly profile: AirTexts['profile'] }) {
  const { api } = useShell();
  const { answer } = useAnswer(profile, () =>
    api.compute.ask('carbon-monoxide/exposure', { profile, samples: NO_CURVE }, LimitsOnly),
  );
  if (answer.state === 'waiting') return <p role="status">{airSetupWords.asking}</p>;
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  return (
    <div class="setup-wide">
      <LimitTable caption={airWords.limitsCaption(PROFILE_WORDS[profile])} limits={answer.value.limits} />
    </div>
  );
}
