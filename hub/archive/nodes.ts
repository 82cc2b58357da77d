import type { NodeStatus, ShopNode } from '../contract/shop.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import { type NodeRow, nodeStatements } from './node-statements.ts';
import type { Archive } from './types.ts';

interface NodeDraft {
  readonly name: string;
  readonly label: string;
  readonly note: string;
}

export interface NodePart
  extends Pick<Archive, 'nodes' | 'node' | 'createNode' | 'saveNode' | 'forgetNodeStatus'> {
  readonly byName: (name: string) => ShopNode | null;
  /** Makes a node that nobody has accepted yet. */
  readonly offer: (name: string, at: number) => ShopNode;
  /** Makes the node of that name, or accepts the one that waits. */
  readonly accept: (name: string, at: number) => void;
  readonly countOffered: () => number;
  readonly hear: (id: string, at: number) => void;
  readonly say: (id: string, status: NodeStatus, at: number) => void;
}

function toNode(row: NodeRow): ShopNode {
  return { ...row, adopted: row.adopted === 1, refused: fromJson<Record<string, number>>(row.refused) };
}

export function nodePart(context: Context): NodePart {
  const { ids, write } = context;
  const statements = nodeStatements(context);
  const find = (row: NodeRow | undefined): ShopNode | null => (row ? toNode(row) : null);
  const byName = (name: string) => find(statements.named.get(name));
  const byId = (id: string) => find(statements.byId.get(id));

  function add(draft: NodeDraft, adopted: boolean, at: number): ShopNode {
    const id = ids();
    statements.insert.run({ ...draft, id, adopted: Number(adopted), at });
    const made = byId(id);
    if (!made) throw new ArchiveError('fault', 'a node was inserted and is not there');
    return made;
  }

  /** Writes what people decide. What the node says of itself comes by intake alone, and is newer. */
  function saveNode(node: ShopNode): ShopNode {
    const { id, name, label, note, adopted } = node;
    mustChange(
      statements.update.run({ id, name, label, note, adopted: Number(adopted) }).changes,
      'node',
      id,
    );
    return byId(id) ?? node;
  }

  /** A node may have spoken before a person names it: then it is accepted, not refused as a duplicate. */
  function createNode(draft: NodeDraft, at: number): ShopNode {
    const kept = byName(draft.name);
    if (!kept) return add(draft, true, at);
    if (kept.adopted) throw new ArchiveError('conflict', `there is already a node named "${draft.name}"`);
    return saveNode({ ...kept, ...draft, adopted: true });
  }

  function accept(name: string, at: number): void {
    const kept = byName(name);
    if (!kept) add({ name, label: '', note: '' }, true, at);
    else if (!kept.adopted) saveNode({ ...kept, adopted: true });
  }

  return {
    nodes: () => statements.all.all().map(toNode),
    node: (idOrName) => byId(idOrName) ?? byName(idOrName),
    createNode: (draft, at) => write(() => createNode(draft, at)),
    saveNode,
    forgetNodeStatus: (at) => void statements.forget.run(at),
    byName,
    offer: (name, at) => add({ name, label: '', note: '' }, false, at),
    accept,
    countOffered: () => statements.offered.get() ?? 0,
    hear: (id, at) => void statements.hear.run({ id, at }),
    say: (id, status, at) => void statements.say.run({ id, status, at }),
  };
}
