import type { Note } from '../contract/firing.ts';
import type { Context } from './context.ts';
import type { Archive } from './types.ts';

export function notePart({ db, ids }: Context): Pick<Archive, 'notes' | 'addNote'> {
  const all = db.prepare<[string], Note>(
    `SELECT id, firing_id AS firingId, at, text, by, created_at AS createdAt
     FROM notes WHERE firing_id = ? ORDER BY at, id`,
  );
  const insert = db.prepare(
    'INSERT INTO notes (id, firing_id, at, text, by, created_at) VALUES (@id, @firingId, @at, @text, @by, @createdAt)',
  );
  return {
    notes: (firingId) => all.all(firingId),
    addNote(draft) {
      const note: Note = { ...draft, id: ids() };
      insert.run(note);
      return note;
    },
  };
}
