import { useState } from 'preact/hooks';
import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import { QUANTITIES, type Quantity } from '../../hub/contract/units.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { unitNamed } from '../words/format.ts';
import { bindingWords } from '../words/setup.ts';
import { type BindingTexts, checkBinding, withQuantity } from './binding-form.ts';
import { unitsOf } from './channel-form.ts';
import { tryPayload } from './pointer.ts';
import { UnitField } from './unit-field.tsx';
import type { TextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  topic: bindingWords.topic,
  node: bindingWords.node,
  channel: bindingWords.channel,
  quantity: bindingWords.quantity,
  unit: bindingWords.unit,
  'decoder.valuePointer': bindingWords.valuePointer,
  'decoder.timePointer': bindingWords.timePointer,
  scale: bindingWords.scale,
  offset: bindingWords.offset,
};

export function bindingFieldName(path: string): string {
  return NAMES[path] ?? path;
}

interface FieldsProps {
  readonly form: Pick<TextForm<BindingTexts, unknown>, 'texts' | 'set' | 'fault'>;
}

/** Where it comes from and which channel it is. */
export function PlaceFields({ form: { texts, set, fault } }: FieldsProps) {
  return (
    <>
      <TextField
        label={bindingWords.topic}
        hint={bindingWords.topicHint}
        value={texts.topic}
        onChange={(topic) => set({ topic })}
        maxLength={256}
        error={fault('topic')}
      />
      <TextField
        label={bindingWords.node}
        hint={bindingWords.nodeHint}
        value={texts.node}
        onChange={(node) => set({ node })}
        maxLength={64}
        error={fault('node')}
      />
      <TextField
        label={bindingWords.channel}
        value={texts.channel}
        onChange={(channel) => set({ channel })}
        maxLength={128}
        error={fault('channel')}
      />
      <div class="form-row">
        <SelectField<Quantity>
          label={bindingWords.quantity}
          value={texts.quantity}
          options={QUANTITIES.map((value) => ({ value, label: QUANTITY_FACTS[value].label }))}
          onChange={(quantity) => set(withQuantity(quantity))}
        />
        <SelectField
          label={bindingWords.unit}
          value={texts.unit}
          options={unitsOf(texts.quantity).map((unit) => ({ value: unit.code, label: unit.label }))}
          onChange={(unit) => set({ unit })}
          error={fault('unit')}
        />
      </div>
    </>
  );
}

/** How the payload is read, with a place to try it. */
export function DecoderFields({ form }: FieldsProps) {
  const { texts, set, fault } = form;
  return (
    <>
      <SelectField<BindingTexts['kind']>
        label={bindingWords.payload}
        value={texts.kind}
        options={[
          { value: 'json', label: bindingWords.payloadJson },
          { value: 'number', label: bindingWords.payloadNumber },
        ]}
        onChange={(kind) => set({ kind })}
      />
      {texts.kind === 'json' && (
        <>
          <TextField
            label={bindingWords.valuePointer}
            hint={bindingWords.pointerHint}
            value={texts.valuePointer}
            onChange={(valuePointer) => set({ valuePointer })}
            maxLength={256}
            error={fault('decoder.valuePointer')}
          />
          <TextField
            label={bindingWords.timePointer}
            hint={bindingWords.timePointerHint}
            value={texts.timePointer}
            onChange={(timePointer) => set({ timePointer })}
            maxLength={256}
            error={fault('decoder.timePointer')}
          />
        </>
      )}
      {texts.kind === 'json' && texts.timePointer.trim() !== '' && (
        <SelectField<BindingTexts['timeFormat']>
          label={bindingWords.timeFormat}
          value={texts.timeFormat}
          options={(['epoch-seconds', 'epoch-milliseconds', 'iso8601'] as const).map((value) => ({
            value,
            label: bindingWords.timeFormats[value],
          }))}
          onChange={(timeFormat) => set({ timeFormat })}
        />
      )}
      <TryIt texts={texts} />
    </>
  );
}

export function ScaleFields({ form: { texts, set, fault } }: FieldsProps) {
  return (
    <div class="form-row">
      <UnitField
        label={bindingWords.scale}
        hint={bindingWords.scaleHint}
        value={texts.scale}
        unit="×"
        onChange={(scale) => set({ scale })}
        error={fault('scale')}
      />
      <UnitField
        label={bindingWords.offset}
        hint={bindingWords.offsetHint}
        value={texts.offset}
        unit={unitNamed(texts.unit).label}
        onChange={(offset) => set({ offset })}
        error={fault('offset')}
      />
    </div>
  );
}

function TryIt({ texts }: { readonly texts: BindingTexts }) {
  const [payload, setPayload] = useState('');
  const { value } = checkBinding({ ...texts, topic: 'a/+', channel: 'a', node: '' });
  const read = tryPayload(payload, texts.kind === 'json' ? texts.valuePointer.trim() : null);
  const answer =
    read.ok && value
      ? bindingWords.tryAnswer(`${read.value * value.scale + value.offset} ${unitNamed(texts.unit).label}`)
      : '';
  return (
    <div>
      <TextField
        label={bindingWords.tryField}
        hint={bindingWords.tryHint}
        value={payload}
        onChange={setPayload}
        rows={2}
        error={payload.trim() === '' || read.ok ? undefined : read.message}
      />
      <p role="status">{payload.trim() === '' ? '' : answer}</p>
    </div>
  );
}
