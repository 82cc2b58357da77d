import type { ShopNode } from '../../hub/contract/shop.ts';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { nodeWords, setupWords } from '../words/setup.ts';
import { FormFrame } from './form-frame.tsx';
import { checkNode, type NodeTexts } from './node-form.ts';
import { useTextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  name: nodeWords.name,
  label: nodeWords.label,
  note: nodeWords.note,
};

interface NodeDialogProps {
  /** Null: one that is expected. */
  readonly node: ShopNode | null;
  readonly onClose: () => void;
}

export function NodeDialog({ node, onClose }: NodeDialogProps) {
  const { api } = useShell();
  const press = useAction();
  const start = { name: node?.name ?? '', label: node?.label ?? '', note: node?.note ?? '' };
  const form = useTextForm<NodeTexts, NodeTexts>(start, checkNode);
  const { texts, set, fault } = form;
  const send = ({ name, label, note }: NodeTexts) =>
    press.run(async () => {
      if (node) await api.setup.changeNode(node.id, { label, note });
      else await api.setup.createNode({ name, label, note });
      onClose();
    });
  return (
    <Dialog
      title={node ? nodeWords.edit(node.name) : nodeWords.expect}
      onClose={onClose}
      closeWord={setupWords.cancel}
    >
      <FormFrame
        onSubmit={(event) => form.submit(event, send)}
        press={press}
        listed={form.listed}
        nameOf={(path) => NAMES[path] ?? path}
        send={setupWords.save}
      >
        {node === null && (
          <TextField
            label={nodeWords.name}
            hint={nodeWords.nameHint}
            value={texts.name}
            onChange={(name) => set({ name })}
            maxLength={64}
            error={fault('name')}
          />
        )}
        <TextField
          label={nodeWords.label}
          value={texts.label}
          onChange={(label) => set({ label })}
          maxLength={80}
          error={fault('label')}
        />
        <TextField
          label={nodeWords.note}
          value={texts.note}
          onChange={(note) => set({ note })}
          rows={2}
          maxLength={2000}
          error={fault('note')}
        />
      </FormFrame>
    </Dialog>
  );
}
