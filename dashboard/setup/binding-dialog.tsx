import { Dialog } from '../parts/dialog.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { bindingWords, setupWords } from '../words/setup.ts';
import { bindingFieldName, DecoderFields, PlaceFields, ScaleFields } from './binding-fields.tsx';
import { type BindingTexts, type BindingValue, checkBinding, EMPTY_BINDING } from './binding-form.ts';
import { FormFrame } from './form-frame.tsx';
import { useTextForm } from './use-text-form.ts';

interface BindingDialogProps {
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** Binds a foreign topic to a channel. */
export function BindingDialog({ onClose, onDone }: BindingDialogProps) {
  const { api } = useShell();
  const press = useAction();
  const form = useTextForm<BindingTexts, BindingValue>(EMPTY_BINDING, checkBinding);
  const send = (value: BindingValue) =>
    press.run(async () => {
      await api.setup.createBinding(value);
      onDone();
      onClose();
    });
  return (
    <Dialog title={bindingWords.add} onClose={onClose} closeWord={setupWords.cancel}>
      <FormFrame
        onSubmit={(event) => form.submit(event, send)}
        press={press}
        listed={form.listed}
        nameOf={bindingFieldName}
        send={bindingWords.addThis}
      >
        <PlaceFields form={form} />
        <DecoderFields form={form} />
        <ScaleFields form={form} />
      </FormFrame>
    </Dialog>
  );
}
