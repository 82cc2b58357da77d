import { StraightLineAnswer } from '../../hub/contract/compute/thermocouple.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { probeWords, SOURCE_WORDS } from '../words/setup-probe.ts';
import type { ProbeFieldsProps } from './probe-fields.tsx';
import type { ProbeTexts } from './probe-form.ts';
import { UnitField } from './unit-field.tsx';

interface SourceFieldsProps extends ProbeFieldsProps {
  /** Names of the node's channels that may be chosen. */
  readonly emfs: readonly string[];
  readonly junctions: readonly string[];
  /** What the node was refused so far that a wrong source shows by; null: nothing. */
  readonly refusals: string | null;
}

const KINDS = ['celsius', 'emf', 'straight-line'] as const;

/** How the channel's readings come about. */
export function SourceFields({ texts, set, fault, emfs, junctions, refusals }: SourceFieldsProps) {
  return (
    <>
      <SelectField<ProbeTexts['source']>
        label={probeWords.source}
        value={texts.source}
        hint={texts.source === 'emf' ? probeWords.computedHere : undefined}
        options={KINDS.map((value) => ({ value, label: SOURCE_WORDS[value] }))}
        onChange={(source) => set({ source })}
        error={fault('source')}
      />
      {refusals !== null && <p class="aside">{refusals}</p>}
      {texts.source === 'emf' && (
        <NamePicker
          label={probeWords.emfChannel}
          value={texts.emfChannel}
          names={emfs}
          onChange={(emfChannel) => set({ emfChannel })}
          error={fault('source.emfChannel')}
        />
      )}
      {texts.source === 'straight-line' && <SlopeField texts={texts} set={set} fault={fault} />}
      {texts.source !== 'celsius' && (
        <NamePicker
          label={probeWords.junctionChannel}
          value={texts.junctionChannel}
          names={junctions}
          onChange={(junctionChannel) => set({ junctionChannel })}
          error={fault('source.coldJunctionChannel')}
        />
      )}
    </>
  );
}

interface NamePickerProps {
  readonly label: string;
  readonly value: string;
  readonly names: readonly string[];
  readonly onChange: (name: string) => void;
  readonly error: string | undefined;
}

/** A channel of the node by name; where the node has none yet, a name that it will have. */
function NamePicker({ label, value, names, onChange, error }: NamePickerProps) {
  if (names.length === 0) {
    return (
      <TextField
        label={label}
        hint={probeWords.nameHint}
        value={value}
        onChange={onChange}
        maxLength={128}
        error={error}
      />
    );
  }
  const known = value === '' || names.includes(value) ? names : [value, ...names];
  return (
    <SelectField
      label={label}
      value={value}
      options={[
        { value: '', label: probeWords.choose },
        ...known.map((name) => ({ value: name, label: name })),
      ]}
      onChange={onChange}
      error={error}
    />
  );
}

/** Any reading will do: what is asked for is the slope that the answer names. */
const ASKED_CELSIUS = { reportedCelsius: 100, coldJunctionCelsius: 25 } as const;

function SlopeField({ texts, set, fault }: ProbeFieldsProps) {
  const { api } = useShell();
  const press = useAction();
  const usual = () =>
    press.run(async () => {
      const question = { type: texts.type, ...ASKED_CELSIUS };
      const answer = await api.compute.ask('thermocouple-straight-line', question, StraightLineAnswer);
      set({ slope: String(answer.slopeMillivoltsPerCelsius) });
    });
  return (
    <>
      <UnitField
        label={probeWords.slope}
        hint={probeWords.slopeHint}
        unit={probeWords.slopeUnit}
        value={texts.slope}
        onChange={(slope) => set({ slope })}
        error={fault('source.slopeMillivoltsPerCelsius')}
      />
      <div class="form-acts">
        <Button busy={press.busy} onPress={usual}>
          {probeWords.usualSlope(texts.type)}
        </Button>
      </div>
      <ProblemNote error={press.error} />
    </>
  );
}
