import { BindingDraft, type PayloadDecoder } from '../../hub/contract/shop.ts';
import { BASE_UNIT, type Quantity } from '../../hub/contract/units.ts';
import { faultsOf, missing } from '../parts/faults.ts';
import { bindingWords } from '../words/setup.ts';
import { Reader } from './read-texts.ts';
import type { Checked } from './use-text-form.ts';

type TimeFormat = Extract<PayloadDecoder, { kind: 'json' }>['timeFormat'];

export interface BindingTexts {
  readonly topic: string;
  /** Empty: the text of the first + level. */
  readonly node: string;
  readonly channel: string;
  readonly quantity: Quantity;
  readonly unit: string;
  readonly kind: PayloadDecoder['kind'];
  readonly valuePointer: string;
  readonly timePointer: string;
  readonly timeFormat: TimeFormat;
  readonly scale: string;
  readonly offset: string;
}

export type BindingValue = ReturnType<typeof BindingDraft.parse>;

export const EMPTY_BINDING: BindingTexts = {
  topic: '',
  node: '',
  channel: '',
  quantity: 'temperature',
  unit: BASE_UNIT.temperature,
  kind: 'json',
  valuePointer: '',
  timePointer: '',
  timeFormat: 'epoch-seconds',
  scale: '1',
  offset: '0',
};

/** What the form means. Faults by the contract's field names; the decoder's under "decoder.valuePointer" and so on. */
export function checkBinding(texts: BindingTexts): Checked<BindingValue> {
  const reader = new Reader();
  const scale = reader.number('scale', texts.scale);
  const offset = reader.number('offset', texts.offset);
  const node = texts.node.trim() === '' ? null : texts.node.trim();
  if (node === null && texts.topic.trim() !== '' && !texts.topic.split('/').includes('+')) {
    reader.faults.node = bindingWords.nodeMissing;
  }
  const parsed = BindingDraft.safeParse({
    topic: texts.topic.trim(),
    node,
    channel: texts.channel.trim(),
    quantity: texts.quantity,
    unit: texts.unit,
    decoder: decoderOf(texts),
    ...(scale === undefined ? {} : { scale }),
    ...(offset === undefined ? {} : { offset }),
  });
  const faults = {
    ...(parsed.success ? {} : faultsOf(parsed.error.issues)),
    ...reader.faults,
    ...missing({ topic: texts.topic, channel: texts.channel }),
  };
  return { value: parsed.success && Object.keys(faults).length === 0 ? parsed.data : null, faults };
}

/** Another quantity has other units: its base unit is the first guess. */
export function withQuantity(quantity: Quantity): Pick<BindingTexts, 'quantity' | 'unit'> {
  return { quantity, unit: BASE_UNIT[quantity] };
}

function decoderOf({ kind, valuePointer, timePointer, timeFormat }: BindingTexts) {
  if (kind === 'number') return { kind };
  const timeAt = timePointer.trim();
  return { kind, valuePointer: valuePointer.trim(), timePointer: timeAt === '' ? null : timeAt, timeFormat };
}
