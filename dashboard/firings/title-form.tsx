import { useState } from 'preact/hooks';
import type { FiringDetail } from '../../hub/contract/firing.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';

interface TitleFormProps {
  readonly firing: Pick<FiringDetail, 'id' | 'title' | 'note'>;
  readonly onClose: () => void;
  readonly onSaved: () => void;
}

/** Title and note of a firing. */
export function TitleForm({ firing, onClose, onSaved }: TitleFormProps) {
  const { api } = useShell();
  const [title, setTitle] = useState(firing.title);
  const [note, setNote] = useState(firing.note);
  const press = useAction();
  const save = (event: Event) => {
    event.preventDefault();
    press.run(async () => {
      await api.changeFiring(firing.id, { title, note });
      onSaved();
      onClose();
    });
  };
  return (
    <Dialog title={firingWords.edit} onClose={onClose} closeWord={firingWords.cancel}>
      <form class="form" onSubmit={save} noValidate>
        <TextField label={firingWords.titleField} value={title} onChange={setTitle} maxLength={120} />
        <TextField label={firingWords.noteField} value={note} onChange={setNote} rows={4} maxLength={4000} />
        <ProblemNote error={press.error} />
        <div class="form-acts">
          <Button type="submit" tone="main" busy={press.busy}>
            {firingWords.save}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
