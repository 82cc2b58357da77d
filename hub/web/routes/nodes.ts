import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import {
  AdoptRequest,
  type Channel,
  likelyRole,
  NodeDraft,
  NodePatch,
  Refusal,
  ShopNode,
} from '../../contract/shop.ts';
import { WatchError } from '../../watch/errors.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { defined, need } from './need.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/nodes',
  summary: 'Every node, adopted or offering itself',
  responses: { 200: json(z.array(ShopNode), 'Nodes') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/nodes',
  summary: 'Expect a node before it speaks',
  request: { body: jsonBody(NodeDraft) },
  responses: { 201: json(ShopNode, 'The new node') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/nodes/{id}',
  summary: 'One node, by id or name',
  request: { params: IdParam },
  responses: { 200: json(ShopNode, 'The node') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/nodes/{id}',
  summary: 'Change a node, or adopt it alone',
  request: { params: IdParam, body: jsonBody(NodePatch) },
  responses: { 200: json(ShopNode, 'The node as it is now') },
});
const adopt = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/nodes/{id}/adopt',
  summary: 'Adopt a node with every channel it offers',
  request: { params: IdParam, body: { ...jsonBody(AdoptRequest), required: false } },
  responses: { 200: json(ShopNode, 'The adopted node') },
});
const refusals = declareRoute('look', {
  method: 'get',
  path: '/api/v1/refusals',
  summary: 'The last payloads that could not be understood, with their raw start',
  request: {
    query: z.object({
      node: z.string().optional(),
      limit: z.coerce.number().int().min(1).max(500).default(50),
    }),
  },
  responses: { 200: json(z.array(Refusal), 'Newest first') },
});

export function nodeRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, bus, clock, watch } = parts;
  const find = (id: string): ShopNode => need(archive.node(id), 'node', id);
  const changed = (node: ShopNode): ShopNode => {
    parts.catalogueChanged();
    watch.setupChanged();
    bus.tell({ type: 'node', node });
    return node;
  };
  app.openapi(list, (c) => c.json([...archive.nodes()], 200));
  app.openapi(create, (c) => {
    const draft = c.req.valid('json');
    if (archive.node(draft.name))
      throw new WatchError('already-exists', `there is a node ${draft.name} already`);
    return c.json(changed(archive.createNode(draft, clock.now())), 201);
  });
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(change, (c) => {
    const node = { ...find(c.req.valid('param').id), ...defined(c.req.valid('json')) };
    return c.json(changed(archive.saveNode(node)), 200);
  });
  app.openapi(adopt, (c) => {
    const node = find(c.req.valid('param').id);
    const { furnaceId } = AdoptRequest.parse(c.req.valid('json') ?? {});
    if (furnaceId !== null) need(archive.furnace(furnaceId), 'furnace', furnaceId);
    for (const channel of archive.channels()) {
      if (channel.node !== node.name || channel.adopted || channel.archived) continue;
      bus.tell({ type: 'channel', channel: archive.saveChannel(adopted(channel, furnaceId)) });
    }
    return c.json(changed(archive.saveNode({ ...node, adopted: true })), 200);
  });
  app.openapi(refusals, (c) => c.json([...archive.refusals(c.req.valid('query'))], 200));
}

/** A channel taken in: temperatures go to the furnace, the rest to the shop unless it belongs to the fire. */
function adopted(channel: Channel, furnaceId: string | null): Channel {
  const ofFurnace = isOfTheRoom(channel) ? null : furnaceId;
  const role = channel.role === 'other' ? roleByName(channel, ofFurnace) : channel.role;
  return { ...channel, adopted: true, furnaceId: channel.furnaceId ?? ofFurnace, role };
}

function isOfTheRoom({ quantity, name }: Channel): boolean {
  return (
    likelyRole(quantity, null) === 'room-air' || (quantity === 'temperature' && /room|ambient/i.test(name))
  );
}

function roleByName(channel: Channel, furnaceId: string | null): Channel['role'] {
  if (isOfTheRoom(channel)) return 'room-air';
  if (channel.quantity === 'temperature' && furnaceId !== null && /load|work|piece/i.test(channel.name))
    return 'load';
  // A gauge on the cylinder's side of the regulator says "cylinder"; without the word it is the burner's.
  if (channel.quantity === 'pressure' && /cylinder/i.test(channel.name)) return 'cylinder-pressure';
  return likelyRole(channel.quantity, furnaceId);
}
