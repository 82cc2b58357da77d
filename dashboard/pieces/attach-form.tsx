import { useState } from 'preact/hooks';
import { ATTACHMENT_TYPES, MOST_ATTACHMENT_BYTES } from '../../hub/contract/observation.ts';
import { Button } from '../parts/button.tsx';
import { Field, TextField } from '../parts/field.tsx';
import { seenWords } from '../words/pieces-seen.ts';
import { fileFault } from './attachment.ts';

interface AttachFormProps {
  readonly busy: boolean;
  readonly refusal: unknown;
  readonly attach: (file: File, note: string) => void;
}

/** A photo from the telephone or a file, with a word about it. */
export function AttachForm({ busy, attach }: AttachFormProps) {
  const [file, setFile] = useState<File | null>(null);
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const fault = fileFault(file, { types: ATTACHMENT_TYPES, mostBytes: MOST_ATTACHMENT_BYTES });
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (file !== null && fault === null) attach(file, note);
  };
  const isShown = fault !== null && (tried || file !== null);
  return (
    <form class="form" onSubmit={submit} noValidate>
      <Field label={seenWords.file} hint={seenWords.fileHint} error={isShown ? fault : undefined}>
        {(ids) => (
          <input
            {...ids}
            type="file"
            accept={ATTACHMENT_TYPES.join(',')}
            onChange={(event) => setFile(event.currentTarget.files?.[0] ?? null)}
          />
        )}
      </Field>
      <TextField label={seenWords.note} value={note} onChange={setNote} maxLength={2000} />
      <div class="form-acts">
        <Button type="submit" tone="main" size="wall" busy={busy}>
          {seenWords.takeFile}
        </Button>
      </div>
    </form>
  );
}
