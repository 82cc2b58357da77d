import type { Refusal } from '../contract/shop.ts';
import type { Context } from './context.ts';
import { payloadText } from './payload-text.ts';
import type { Archive, IncomingRefusal } from './types.ts';

/**
 * What a peer can make the archive keep is bounded, or one broken node would fill the disk:
 * the start of each payload, the last few of each reason, of each node, and of all.
 */
export const MOST_PAYLOAD_BYTES = 4096;
export const MOST_OF_REASON = 20;
export const MOST_OF_NODE = 50;
export const MOST_OF_ALL = 2000;
const MOST_TEXT = 500;
const MOST_NAME = 128;

/** The keeper of refusals from nodes that the archive does not keep. */
export const NO_NODE = '';

/** A refusal and who it is counted for. */
export interface RefusalDraft extends IncomingRefusal {
  /** Id of the node it is counted for, or `NO_NODE`. */
  readonly keeper: string;
  readonly node: string;
  readonly at: number;
}

type Stored = Omit<Refusal, 'payloadText'> & { payload: Buffer };

const COLUMNS = 'id, at, node, topic, reason, detail, payload, payload_bytes AS payloadBytes';

function toRefusal({ payload, ...row }: Stored): Refusal {
  return { ...row, payloadText: payloadText(payload) };
}

export interface RefusalPart extends Pick<Archive, 'refusals'> {
  readonly count: (keeper: string, reason: string) => void;
  /** Keeps refusals in the order given, then drops the oldest beyond the bounds. Returns those it wrote. */
  readonly keep: (drafts: readonly RefusalDraft[]) => readonly Refusal[];
  /** True once a minute for each (about, reason): a chatty channel is counted always, kept rarely. */
  readonly due: (about: string, reason: string, at: number) => boolean;
}

const DUE_MS = 60_000;

export function refusalPart({ db, ids }: Context): RefusalPart {
  const newest = db.prepare<[number], Stored>(`SELECT ${COLUMNS} FROM refusals ORDER BY seq DESC LIMIT ?`);
  const ofNode = db.prepare<[object], Stored>(
    `SELECT ${COLUMNS} FROM refusals WHERE node = @node OR keeper = @node ORDER BY seq DESC LIMIT @limit`,
  );
  const count = db.prepare(
    `INSERT INTO refusal_counts (keeper, reason, count) VALUES (?, ?, 1)
     ON CONFLICT (keeper, reason) DO UPDATE SET count = count + 1`,
  );
  const insert = db.prepare(
    `INSERT INTO refusals (id, keeper, node, at, topic, reason, detail, payload_bytes, payload)
     VALUES (@id, @keeper, @node, @at, @topic, @reason, @detail, @payloadBytes, @payload)`,
  );
  const trimNode = db.prepare(
    `DELETE FROM refusals WHERE seq IN (
       SELECT seq FROM (
         SELECT seq, row_number() OVER (ORDER BY seq DESC) AS of_node,
           row_number() OVER (PARTITION BY reason ORDER BY seq DESC) AS of_reason
         FROM refusals WHERE keeper = ?)
       WHERE of_node > ${MOST_OF_NODE} OR of_reason > ${MOST_OF_REASON})`,
  );
  const trimAll = db.prepare(
    `DELETE FROM refusals WHERE seq IN (SELECT seq FROM refusals ORDER BY seq DESC LIMIT -1 OFFSET ${MOST_OF_ALL})`,
  );
  const mark = db.prepare(
    `INSERT INTO refusal_marks (about, reason, kept_at) VALUES (@about, @reason, @at)
     ON CONFLICT (about, reason) DO UPDATE SET kept_at = excluded.kept_at
       WHERE abs(excluded.kept_at - kept_at) >= ${DUE_MS}`,
  );

  function keepOne(draft: RefusalDraft): Refusal {
    const payload = Buffer.from(draft.payload.subarray(0, MOST_PAYLOAD_BYTES));
    const row = {
      id: ids(),
      at: draft.at,
      node: draft.node.slice(0, MOST_NAME),
      topic: draft.topic.slice(0, MOST_TEXT),
      reason: draft.reason.slice(0, MOST_NAME),
      detail: draft.detail.slice(0, MOST_TEXT),
      payloadBytes: draft.payload.length,
    };
    insert.run({ ...row, keeper: draft.keeper, payload });
    return { ...row, payloadText: payloadText(payload) };
  }

  return {
    refusals: ({ node, limit }) =>
      (node === undefined ? newest.all(limit) : ofNode.all({ node, limit })).map(toRefusal),
    count(keeper, reason) {
      count.run(keeper, reason.slice(0, MOST_NAME));
    },
    due: (about, reason, at) => mark.run({ about, reason, at }).changes > 0,
    keep(drafts) {
      const kept = lastOfEach(drafts).map(keepOne);
      for (const keeper of new Set(drafts.map((draft) => draft.keeper))) trimNode.run(keeper);
      if (drafts.length > 0) trimAll.run();
      return kept;
    },
  };
}

/** The last few of each keeper and reason: what would be dropped at once need not be written first. */
function lastOfEach(drafts: readonly RefusalDraft[]): readonly RefusalDraft[] {
  const seen = new Map<string, number>();
  const kept = drafts.toReversed().filter(({ keeper, reason }) => {
    const key = JSON.stringify([keeper, reason]);
    const newer = seen.get(key) ?? 0;
    seen.set(key, newer + 1);
    return newer < MOST_OF_REASON;
  });
  return kept.reverse();
}
