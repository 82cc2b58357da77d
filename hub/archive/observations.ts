import type { Observation, ObservationSeen } from '../contract/observation.ts';
import { type Context, fromJson } from './context.ts';
import type { Attachment, NewAttachment, NewObservation, PieceStore } from './piece-types.ts';

type ObservationPart = Pick<
  PieceStore,
  'observations' | 'observation' | 'addObservation' | 'addAttachment' | 'attachment' | 'deleteObservation'
>;
type StoredObservation = Omit<Observation, 'seen'> & { seen: string };

const SELECT = `
  SELECT id, piece_id AS pieceId, firing_id AS firingId, step_id AS stepId, at, by, note, seen,
    created_at AS createdAt
  FROM observations`;

function toObservation(row: StoredObservation): Observation {
  return { ...row, seen: fromJson<ObservationSeen>(row.seen) };
}

/** What was seen on pieces, and the photos and files that belong to it. */
export function observationPart({ db, ids, write }: Context): ObservationPart {
  const ofPiece = db.prepare<[string], StoredObservation>(`${SELECT} WHERE piece_id = ? ORDER BY at, id`);
  const one = db.prepare<[string], StoredObservation>(`${SELECT} WHERE id = ?`);
  const insert = db.prepare(
    `INSERT INTO observations (id, piece_id, firing_id, step_id, at, by, note, kind, created_at, seen)
     VALUES (@id, @pieceId, @firingId, @stepId, @at, @by, @note, @kind, @createdAt, @seen)`,
  );
  const remove = db.prepare('DELETE FROM observations WHERE id = ?');
  const insertFile = db.prepare(
    `INSERT INTO attachments (id, observation_id, file_name, content_type, bytes, content)
     VALUES (@id, @observationId, @fileName, @contentType, @bytes, @content)`,
  );
  const file = db.prepare<[string], Attachment>(
    'SELECT file_name AS fileName, content_type AS contentType, content FROM attachments WHERE id = ?',
  );

  function add(draft: NewObservation): Observation {
    const made: Observation = { ...draft, id: ids() };
    insert.run({ ...made, kind: made.seen.kind, seen: JSON.stringify(made.seen) });
    return made;
  }

  function addFile({ file: said, content, ...about }: NewAttachment): Observation {
    const id = ids();
    const bytes = content.byteLength;
    const made = add({ ...about, seen: { kind: 'attachment', attachmentId: id, bytes, ...said } });
    insertFile.run({ ...said, id, observationId: made.id, bytes, content: Buffer.from(content) });
    return made;
  }

  return {
    observations: (pieceId) => ofPiece.all(pieceId).map(toObservation),
    observation(id) {
      const row = one.get(id);
      return row ? toObservation(row) : null;
    },
    addObservation: add,
    addAttachment: (draft) => write(() => addFile(draft)),
    attachment: (id) => file.get(id) ?? null,
    deleteObservation: (id) => remove.run(id).changes > 0,
  };
}
