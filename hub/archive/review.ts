import type { ObservationSeen } from '../contract/observation.ts';
import type { Segment } from '../contract/schedule.ts';
import { type Context, fromJson } from './context.ts';
import { type StoredSummary, summarySelect, toSummary } from './firing-summaries.ts';
import { reviewNotePart } from './review-notes.ts';
import type { BatchFilter, BatchFiring, HardnessSeen, HeldSoak, ReviewStore } from './review-types.ts';

/** Of firings `f` and furnaces `u`: what every point of a chart says of its firing. */
const FIRING = `
  f.id, f.started_at AS startedAt, f.title, f.furnace_id AS furnaceId, u.name AS furnaceName,
  f.schedule ->> '$.version' AS scheduleVersion, f.verdict`;

const BATCH = `
  SELECT ${FIRING},
    (SELECT json_group_array(m.mark) FROM (
       SELECT mark FROM firing_pieces WHERE firing_id = f.id ORDER BY position) m) AS marks,
    f.schedule -> ('$.segments[' || CAST(@segment AS INTEGER) || ']') AS planned,
    r.state, r.mean_celsius AS meanCelsius, r.peak_celsius AS peakCelsius, r.soak_seconds AS soakSeconds
  FROM firings f JOIN furnaces u ON u.id = f.furnace_id
    LEFT JOIN segment_results r ON r.firing_id = f.id AND r.segment = @segment`;

/** The firing that an observation names, else the last one before it that held its piece. */
const FIRING_OF_OBSERVATION = `coalesce(o.firing_id, (
  SELECT g.id FROM firing_pieces p JOIN firings g ON g.id = p.firing_id
  WHERE p.piece_id = o.piece_id AND g.status = 'finished' AND g.started_at <= o.at
  ORDER BY g.started_at DESC, g.id DESC LIMIT 1))`;

const HARDNESS = `
  SELECT o.id AS observationId, o.piece_id AS pieceId, o.firing_id AS namedFiring, o.step_id AS stepId, o.at,
    o.by, o.note, o.created_at AS createdAt, o.seen, i.mark, ${FIRING}
  FROM observations o JOIN pieces i ON i.id = o.piece_id
    LEFT JOIN firings f ON f.id = ${FIRING_OF_OBSERVATION}
    LEFT JOIN furnaces u ON u.id = f.furnace_id`;

type BatchRow = Omit<BatchFiring, 'marks' | 'planned' | 'result'> &
  Pick<NonNullable<BatchFiring['result']>, 'meanCelsius' | 'peakCelsius' | 'soakSeconds'> & {
    marks: string;
    planned: string | null;
    state: NonNullable<BatchFiring['result']>['state'] | null;
  };

type HardnessRow = Omit<NonNullable<HardnessSeen['firing']>, 'id'> & {
  id: string | null;
  observationId: string;
  pieceId: string;
  namedFiring: string | null;
  stepId: string | null;
  at: number;
  by: string;
  note: string;
  createdAt: number;
  seen: string;
  mark: string;
};

function toBatch({
  planned,
  marks,
  state,
  meanCelsius,
  peakCelsius,
  soakSeconds,
  ...row
}: BatchRow): BatchFiring {
  return {
    ...row,
    marks: fromJson<string[]>(marks),
    planned: planned === null ? null : fromJson<Segment>(planned),
    result: state === null ? null : { state, meanCelsius, peakCelsius, soakSeconds },
  };
}

function toHardness(row: HardnessRow): HardnessSeen {
  const { id, startedAt, title, furnaceId, furnaceName, scheduleVersion, verdict } = row;
  const { observationId, pieceId, namedFiring, stepId, at, by, note, createdAt, seen, mark } = row;
  const about = { id: observationId, pieceId, firingId: namedFiring, stepId, at, by, note, createdAt };
  return {
    observation: { ...about, seen: fromJson<ObservationSeen>(seen) },
    mark,
    firing: id === null ? null : { id, startedAt, title, furnaceId, furnaceName, scheduleVersion, verdict },
  };
}

function termsOf({ scheduleId, furnaceId }: BatchFilter): string[] {
  return [
    scheduleId === undefined ? null : "f.schedule ->> '$.id' = @scheduleId",
    furnaceId === undefined ? null : 'f.furnace_id = @furnaceId',
  ].filter((term) => term !== null);
}

/** Questions over many firings at once. Each walks an index from its newest end and stops at the limit. */
export function reviewPart(context: Context): ReviewStore {
  const { db } = context;
  const soaks = db.prepare<[string], HeldSoak>(
    `SELECT r.mean_celsius AS celsius, r.soak_seconds AS seconds
     FROM segment_results r JOIN firings f ON f.id = r.firing_id
     WHERE r.firing_id = ? AND r.mean_celsius IS NOT NULL
       AND f.schedule ->> ('$.segments[' || r.segment || '].kind') = 'soak'
     ORDER BY r.segment`,
  );
  const summaries = db.prepare<[string], StoredSummary>(
    `${summarySelect()} WHERE f.id IN (SELECT value FROM json_each(?))`,
  );
  return {
    ...reviewNotePart(context),
    batch(filter) {
      const where = ["f.status = 'finished'", ...termsOf(filter)].join(' AND ');
      const sql = `${BATCH} WHERE ${where} ORDER BY f.started_at DESC, f.id DESC LIMIT @limit`;
      return db.prepare<[object], BatchRow>(sql).all(filter).map(toBatch);
    },
    hardnessSeen(filter) {
      const where = ["o.kind = 'hardness'", ...termsOf(filter)].join(' AND ');
      const sql = `${HARDNESS} WHERE ${where} ORDER BY o.at DESC, o.id DESC LIMIT @limit`;
      return db.prepare<[object], HardnessRow>(sql).all(filter).map(toHardness);
    },
    heldSoaks: (firingId) => soaks.all(firingId),
    summariesOf: (ids) => summaries.all(JSON.stringify(ids)).map(toSummary),
  };
}
