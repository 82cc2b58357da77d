import { NodeDraft } from '../../hub/contract/shop.ts';
import { faultsOf, missing } from '../parts/faults.ts';
import type { Checked } from './use-text-form.ts';

export type NodeTexts = Record<'name' | 'label' | 'note', string>;

/** A node that is expected, or what people call one that is there. */
export function checkNode(texts: NodeTexts): Checked<NodeTexts> {
  const parsed = NodeDraft.safeParse({ ...texts, name: texts.name.trim(), label: texts.label.trim() });
  if (parsed.success) return { value: parsed.data, faults: {} };
  const faults = { ...faultsOf(parsed.error.issues), ...missing({ name: texts.name }) };
  return { value: null, faults };
}
