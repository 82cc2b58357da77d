import type { NodeStatus, ShopNode } from '../contract/shop.ts';
import { type Context, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { Archive } from './types.ts';

type NodeRow = Omit<ShopNode, 'adopted' | 'refused'> & { adopted: number; refused: string };

/** The counts come as one JSON object in the same query: a list of nodes is one query, not one for each. */
const SELECT = `
  SELECT id, name, label, note, adopted, status, status_at AS statusAt, last_heard_at AS lastHeardAt,
    created_at AS createdAt,
    (SELECT json_group_object(reason, count) FROM refusal_counts WHERE keeper = nodes.id) AS refused
  FROM nodes`;

function toNode(row: NodeRow): ShopNode {
  const refused = JSON.parse(row.refused) as Record<string, number>;
  return { ...row, adopted: row.adopted === 1, refused };
}

export interface NodePart
  extends Pick<Archive, 'nodes' | 'node' | 'createNode' | 'saveNode' | 'forgetNodeStatus'> {
  readonly byName: (name: string) => ShopNode | null;
  /** Makes a node that nobody has accepted yet. */
  readonly offer: (name: string, at: number) => ShopNode;
  readonly countOffered: () => number;
  readonly heard: (id: string, at: number) => void;
  readonly say: (id: string, status: NodeStatus, at: number) => void;
}

export function nodePart({ db, ids, write }: Context): NodePart {
  const all = db.prepare<[], NodeRow>(`${SELECT} ORDER BY name`);
  const byId = db.prepare<[string], NodeRow>(`${SELECT} WHERE id = ?`);
  const named = db.prepare<[string], NodeRow>(`${SELECT} WHERE name = ?`);
  const offered = db.prepare<[], number>('SELECT count(*) FROM nodes WHERE adopted = 0').pluck();
  const insert = db.prepare(
    `INSERT INTO nodes (id, name, label, note, adopted, status, status_at, last_heard_at, created_at)
     VALUES (@id, @name, @label, @note, @adopted, @status, @statusAt, @lastHeardAt, @createdAt)`,
  );
  const update = db.prepare(
    `UPDATE nodes SET name = @name, label = @label, note = @note, adopted = @adopted, status = @status,
       status_at = @statusAt, last_heard_at = @lastHeardAt WHERE id = @id`,
  );
  const heard = db.prepare(
    'UPDATE nodes SET last_heard_at = max(coalesce(last_heard_at, 0), @at) WHERE id = @id',
  );
  const say = db.prepare('UPDATE nodes SET status = @status, status_at = @at WHERE id = @id');
  const forget = db.prepare("UPDATE nodes SET status = 'unknown', status_at = ? WHERE status <> 'unknown'");

  const find = (row: NodeRow | undefined): ShopNode | null => (row ? toNode(row) : null);
  const byName = (name: string) => find(named.get(name));

  function add(draft: { name: string; label: string; note: string }, adopted: boolean, at: number): ShopNode {
    const node: ShopNode = {
      ...draft,
      id: ids(),
      adopted,
      status: 'unknown',
      statusAt: null,
      lastHeardAt: null,
      refused: {},
      createdAt: at,
    };
    insert.run({ ...node, adopted: Number(adopted) });
    return node;
  }

  function saveNode(node: ShopNode): ShopNode {
    const { changes } = update.run({ ...node, adopted: Number(node.adopted) });
    mustChange(changes, 'node', node.id);
    return node;
  }

  /** A node may have spoken before a person names it: then it is accepted, not refused as a duplicate. */
  function createNode(draft: { name: string; label: string; note: string }, at: number): ShopNode {
    const kept = byName(draft.name);
    if (!kept) return add(draft, true, at);
    if (kept.adopted) throw new ArchiveError('conflict', `there is already a node named "${draft.name}"`);
    return saveNode({ ...kept, ...draft, adopted: true });
  }

  return {
    nodes: () => all.all().map(toNode),
    node: (idOrName) => find(byId.get(idOrName)) ?? byName(idOrName),
    createNode: (draft, at) => write(() => createNode(draft, at)),
    saveNode,
    forgetNodeStatus: (at) => {
      forget.run(at);
    },
    byName,
    offer: (name, at) => add({ name, label: '', note: '' }, false, at),
    countOffered: () => offered.get() ?? 0,
    heard: (id, at) => {
      heard.run({ id, at });
    },
    say: (id, status, at) => {
      say.run({ id, status, at });
    },
  };
}
