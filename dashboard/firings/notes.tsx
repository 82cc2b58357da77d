import { useState } from 'preact/hooks';
import type { Note } from '../../hub/contract/firing.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';
import { dayAndTime } from '../words/time.ts';

interface NotesProps {
  readonly firingId: string;
  readonly notes: readonly Note[];
  readonly onAdded: () => void;
}

/** Notes that people wrote, and a place to write one. */
export function Notes({ firingId, notes, onAdded }: NotesProps) {
  return (
    <section class="firing-section" aria-labelledby="notes-head">
      <h2 id="notes-head">{firingWords.notes}</h2>
      {notes.length === 0 && <p>{firingWords.noNotes}</p>}
      <ul class="notes">
        {notes.map((note) => (
          <li key={note.id}>
            <p class="note-head">
              {[dayAndTime(note.at), note.by].filter((part) => part !== '').join(' · ')}
            </p>
            <p class="note-text">{note.text}</p>
          </li>
        ))}
      </ul>
      <NewNote firingId={firingId} onAdded={onAdded} />
    </section>
  );
}

function NewNote({ firingId, onAdded }: Omit<NotesProps, 'notes'>) {
  const { api } = useShell();
  const [text, setText] = useState('');
  const [by, setBy] = useState('');
  const [complaint, setComplaint] = useState<string | undefined>(undefined);
  const [kept, setKept] = useState(false);
  const press = useAction();
  const add = (event: Event) => {
    event.preventDefault();
    setKept(false);
    if (text.trim() === '') return setComplaint(firingWords.noteEmpty);
    setComplaint(undefined);
    press.run(async () => {
      await api.addNote(firingId, { text, by: by.trim() });
      setText('');
      setKept(true);
      onAdded();
    });
  };
  return (
    <form class="form form-narrow" onSubmit={add} noValidate>
      <TextField
        label={firingWords.noteText}
        value={text}
        onChange={setText}
        rows={3}
        maxLength={4000}
        error={complaint}
      />
      <TextField
        label={firingWords.noteBy}
        hint={firingWords.noteByHint}
        value={by}
        onChange={setBy}
        maxLength={80}
      />
      <ProblemNote error={press.error} />
      <div class="form-acts">
        <Button type="submit" busy={press.busy}>
          {firingWords.addNote}
        </Button>
        <span role="status">{kept ? firingWords.noteAdded : ''}</span>
      </div>
    </form>
  );
}
