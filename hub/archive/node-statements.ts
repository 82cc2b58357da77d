import type { ShopNode } from '../contract/shop.ts';
import type { Context } from './context.ts';

export type NodeRow = Omit<ShopNode, 'adopted' | 'refused'> & { adopted: number; refused: string };

/** The counts come as one JSON object in the same query: a list of nodes is one query, not one for each. */
const SELECT = `
  SELECT id, name, label, note, adopted, status, status_at AS statusAt, last_heard_at AS lastHeardAt,
    created_at AS createdAt,
    (SELECT json_group_object(reason, count) FROM refusal_counts WHERE keeper = nodes.id) AS refused
  FROM nodes`;

/** Every question that is put to the nodes table, prepared once. */
export function nodeStatements({ db }: Context) {
  return {
    all: db.prepare<[], NodeRow>(`${SELECT} ORDER BY name`),
    byId: db.prepare<[string], NodeRow>(`${SELECT} WHERE id = ?`),
    named: db.prepare<[string], NodeRow>(`${SELECT} WHERE name = ?`),
    offered: db.prepare<[], number>('SELECT count(*) FROM nodes WHERE adopted = 0').pluck(),
    insert: db.prepare(
      `INSERT INTO nodes (id, name, label, note, adopted, status, created_at)
       VALUES (@id, @name, @label, @note, @adopted, 'unknown', @at)`,
    ),
    update: db.prepare(
      'UPDATE nodes SET name = @name, label = @label, note = @note, adopted = @adopted WHERE id = @id',
    ),
    hear: db.prepare('UPDATE nodes SET last_heard_at = max(coalesce(last_heard_at, 0), @at) WHERE id = @id'),
    say: db.prepare('UPDATE nodes SET status = @status, status_at = @at WHERE id = @id'),
    forget: db.prepare("UPDATE nodes SET status = 'unknown', status_at = ? WHERE status <> 'unknown'"),
  };
}
