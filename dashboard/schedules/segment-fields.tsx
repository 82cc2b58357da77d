import { COOLING_MEDIA, type CoolSegment, type DisplayUnit } from '../../hub/contract/schedule.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { unitNamed } from '../words/format.ts';
import { editorWords, MEDIUM_OPTIONS } from '../words/schedules.ts';
import type { FormAction, SegmentForm, SegmentText } from './form.ts';

const { fields } = editorWords;

interface SegmentFieldsProps {
  readonly segment: SegmentForm;
  readonly unit: DisplayUnit;
  /** The fault of a field by its name in the contract. */
  readonly fault: (field: string) => string | undefined;
  readonly act: (action: FormAction) => void;
}

/** The fields of one segment: which ones depends on its kind. */
export function SegmentFields(props: SegmentFieldsProps) {
  switch (props.segment.kind) {
    case 'ramp':
      return (
        <div class="segment-fields">
          <Amount {...props} of="target" label={fields.target} path="targetCelsius" />
          <Amount {...props} of="tolerance" label={fields.tolerance} path="toleranceCelsius" />
          <Amount
            {...props}
            of="rate"
            label={fields.rate}
            path="rateCelsiusPerHour"
            per="/h"
            hint={editorWords.rateHint}
          />
        </div>
      );
    case 'soak':
      return (
        <div class="segment-fields">
          <Amount {...props} of="target" label={fields.soakTarget} path="targetCelsius" />
          <Amount {...props} of="tolerance" label={fields.tolerance} path="toleranceCelsius" />
          <Amount
            {...props}
            of="duration"
            label={fields.duration}
            path="durationSeconds"
            hint={editorWords.durationHint}
          />
        </div>
      );
    case 'cool':
      return <CoolFields {...props} />;
    default:
      return props.segment.kind satisfies never;
  }
}

function CoolFields(props: SegmentFieldsProps) {
  const { segment, act, fault } = props;
  return (
    <div class="segment-fields">
      <Amount {...props} of="target" label={fields.coolTarget} path="targetCelsius" />
      <SelectField<CoolSegment['medium']>
        label={fields.medium}
        value={segment.medium}
        options={COOLING_MEDIA.map((value) => ({ value, label: MEDIUM_OPTIONS[value] }))}
        onChange={(medium) => act({ type: 'medium', key: segment.key, medium })}
        error={fault('medium')}
      />
      <Amount
        {...props}
        of="maximumRate"
        label={fields.maximumRate}
        path="maximumRateCelsiusPerHour"
        per="/h"
        hint={editorWords.limitHint}
      />
      <Amount
        {...props}
        of="minimumRate"
        label={fields.minimumRate}
        path="minimumRateCelsiusPerHour"
        per="/h"
        hint={editorWords.limitHint}
      />
    </div>
  );
}

interface AmountProps extends SegmentFieldsProps {
  readonly of: SegmentText;
  readonly label: string;
  readonly path: string;
  readonly per?: string;
  readonly hint?: string;
}

function Amount({ segment, unit, fault, act, of, label, path, per = '', hint }: AmountProps) {
  const change = (text: string) => act({ type: 'text', key: segment.key, field: of, text });
  const suffix = of === 'duration' ? 'h:mm' : `${unitNamed(unit).label}${per}`;
  return (
    <Field label={label} hint={hint} error={fault(path)}>
      {(ids) => (
        <span class="field-number">
          <input
            {...ids}
            type="text"
            autocomplete="off"
            inputMode={of === 'duration' ? 'text' : 'decimal'}
            value={segment[of]}
            onInput={(event) => change(event.currentTarget.value)}
          />
          <span class="field-unit">{suffix}</span>
        </span>
      )}
    </Field>
  );
}
