import { useState } from 'preact/hooks';
import type { ShopNode } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { Button } from '../parts/button.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useShell } from '../shell.ts';
import { NODE_STATUS_WORDS, nodeWords, reasonWords, setupWords } from '../words/setup.ts';
import { since, timeOfDaySeconds } from '../words/time.ts';
import { NodeDialog } from './node-dialog.tsx';
import { OfferList } from './offer-list.tsx';
import { Refusals } from './refusals.tsx';

/** Who publishes: what waits to be taken in, how each node is, what could not be understood. */
export function Nodes({ state }: { readonly state: FeedState }) {
  const { feed } = useShell();
  const [edited, setEdited] = useState<ShopNode | 'new' | null>(null);
  const nodes = [...state.nodes.values()].sort((a, b) => a.name.localeCompare(b.name));
  const columns = columnsAt(feed.now.value, setEdited);
  const freshness = nodes.map((node) => JSON.stringify(node.refused)).join();
  return (
    <>
      <section class="setup-part" aria-labelledby="offers-head">
        <h2 id="offers-head">{nodeWords.waits}</h2>
        <OfferList state={state} />
      </section>
      <Table
        caption={nodeWords.caption}
        columns={columns}
        rows={nodes}
        rowKey={(node) => node.id}
        empty={nodeWords.empty}
      />
      <div class="form-acts">
        <Button onPress={() => setEdited('new')}>{nodeWords.expect}</Button>
        <span class="aside">{nodeWords.expectLong}</span>
      </div>
      <Refusals freshness={freshness} />
      {edited !== null && (
        <NodeDialog node={edited === 'new' ? null : edited} onClose={() => setEdited(null)} />
      )}
    </>
  );
}

function columnsAt(nowMs: number, edit: (node: ShopNode) => void): Column<ShopNode>[] {
  return [
    {
      key: 'name',
      head: nodeWords.name,
      cell: (node) => (
        <>
          {node.name}
          {!node.adopted && <span class="tag">{nodeWords.offered}</span>}
        </>
      ),
    },
    { key: 'label', head: nodeWords.label, cell: (node) => node.label || setupWords.none },
    {
      key: 'status',
      head: nodeWords.status,
      cell: (node) => <span class={`node-${node.status}`}>{NODE_STATUS_WORDS[node.status]}</span>,
    },
    { key: 'heard', head: nodeWords.heard, cell: (node) => heardText(node, nowMs) },
    { key: 'refused', head: nodeWords.refused, cell: refusedCell },
    {
      key: 'acts',
      head: setupWords.actions,
      cell: (node) => (
        <Button name={nodeWords.edit(node.name)} onPress={() => edit(node)}>
          {setupWords.edit}
        </Button>
      ),
    },
  ];
}

function heardText(node: ShopNode, nowMs: number): string {
  if (node.lastHeardAt === null) return nodeWords.never;
  const today = since(node.lastHeardAt, nowMs);
  return today.includes(',') ? today : timeOfDaySeconds(node.lastHeardAt);
}

function refusedCell(node: ShopNode) {
  const counts = Object.entries(node.refused).filter(([, count]) => count > 0);
  if (counts.length === 0) return nodeWords.noRefused;
  return (
    <ul class="reasons">
      {counts
        .sort(([, a], [, b]) => b - a)
        .map(([reason, count]) => (
          <li key={reason}>{nodeWords.count(count, reasonWords(reason))}</li>
        ))}
    </ul>
  );
}
