import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { QUANTITY_FACTS } from '../../contract/quantity.ts';
import { ReadingSeries } from '../../contract/reading.ts';
import { Channel, ChannelDraft, ChannelPatch, likelyRole } from '../../contract/shop.ts';
import { findUnit } from '../../contract/units.ts';
import { WatchError } from '../../watch/errors.ts';
import { noteChannelChange } from '../channel-change.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody, QueryInstant } from '../route.ts';
import { defined, need } from './need.ts';
import { checkProbe } from './probe-check.ts';

const HOUR_MS = 3_600_000;
/** More points than this no screen can show; a chart asks for about two a pixel. */
const MOST_POINTS = 4000;

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/channels',
  summary: 'Every channel, adopted or on offer, with its newest reading',
  responses: { 200: json(z.array(Channel), 'Channels') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/channels',
  summary: 'Add a channel (its node too, when unknown)',
  request: { body: jsonBody(ChannelDraft) },
  responses: { 201: json(Channel, 'The new channel') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/channels/{id}',
  summary: 'One channel',
  request: { params: IdParam },
  responses: { 200: json(Channel, 'The channel') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/channels/{id}',
  summary: 'Change a channel, or adopt it',
  request: { params: IdParam, body: jsonBody(ChannelPatch) },
  responses: { 200: json(Channel, 'The channel as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/channels/{id}',
  summary: 'Put a channel away: its readings stay',
  request: { params: IdParam },
  responses: { 204: { description: 'Put away' } },
});
const readings = declareRoute('look', {
  method: 'get',
  path: '/api/v1/channels/{id}/readings',
  summary: 'Readings of a span, thinned to fit, lowest and highest of each slice kept',
  request: {
    params: IdParam,
    query: z.object({
      from: QueryInstant.optional(),
      to: QueryInstant.optional(),
      points: z.coerce.number().int().min(2).max(MOST_POINTS).default(1000),
    }),
  },
  responses: { 200: json(ReadingSeries, 'The readings, oldest first') },
});

export function channelRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, bus, clock, watch } = parts;
  const find = (id: string): Channel => need(archive.channel(id), 'channel', id);
  const changed = (channel: Channel): Channel => {
    parts.catalogueChanged();
    watch.setupChanged();
    bus.tell({ type: 'channel', channel });
    return channel;
  };
  app.openapi(list, (c) =>
    c.json(
      [...archive.channels()].filter((channel) => !channel.archived),
      200,
    ),
  );
  app.openapi(create, (c) => {
    const draft = c.req.valid('json');
    checkUnit(draft.unit, draft.quantity);
    checkProbe(archive, draft, draft.probe);
    if (draft.furnaceId !== null) need(archive.furnace(draft.furnaceId), 'furnace', draft.furnaceId);
    return c.json(changed(createOrAdopt(parts, draft)), 201);
  });
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(change, (c) => {
    const before = find(c.req.valid('param').id);
    const patch = c.req.valid('json');
    if (patch.furnaceId) need(archive.furnace(patch.furnaceId), 'furnace', patch.furnaceId);
    checkUnit(patch.unit ?? null, before.quantity);
    checkProbe(archive, before, patch.probe ?? null);
    const channel = { ...before, ...defined(patch) };
    const role =
      channel.role === 'other' && patch.role === undefined
        ? likelyRole(channel.quantity, channel.furnaceId)
        : channel.role;
    const saved = archive.saveChannel({ ...channel, role });
    noteChannelChange(parts, before, saved);
    return c.json(changed(saved), 200);
  });
  app.openapi(remove, (c) => {
    const channel = find(c.req.valid('param').id);
    if (archive.runningFirings().some((row) => row.watchedChannels.includes(channel.id))) {
      throw new WatchError('in-use', 'a running firing listens to this channel: finish the firing first');
    }
    changed(archive.saveChannel({ ...channel, archived: true }));
    return c.body(null, 204);
  });
  app.openapi(readings, (c) => {
    const channel = find(c.req.valid('param').id);
    const query = c.req.valid('query');
    const to = query.to ?? clock.now();
    const from = query.from ?? to - HOUR_MS;
    if (from > to) throw new WatchError('invalid-request', '`from` must not lie after `to`');
    return c.json(archive.readings.series(channel, from, to, query.points), 200);
  });
}

function checkUnit(unit: string | null, quantity: Channel['quantity']): void {
  if (unit === null || findUnit(unit, quantity) !== undefined) return;
  throw new WatchError(
    'invalid-request',
    `${unit} is not a unit of ${QUANTITY_FACTS[quantity].label.toLowerCase()}`,
  );
}

/** A channel that was on offer under the same name is taken in; its earlier readings come with it. */
function createOrAdopt({ archive, clock }: WebParts, draft: ChannelDraft): Channel {
  const now = clock.now();
  const role = draft.role ?? likelyRole(draft.quantity, draft.furnaceId);
  const staleAfterSeconds = draft.staleAfterSeconds ?? QUANTITY_FACTS[draft.quantity].staleAfterSeconds;
  const wanted = { ...draft, role, staleAfterSeconds };
  const there = archive.channels().find((c) => c.node === draft.node && c.name === draft.name);
  if (there?.adopted && !there.archived) {
    throw new WatchError('already-exists', `the node ${draft.node} has a channel ${draft.name} already`);
  }
  // What nobody has accepted yet was only guessed at from its unit: the person who sets it up knows better.
  if (there?.adopted && there.quantity !== draft.quantity) {
    throw new WatchError(
      'conflict',
      `${draft.node}/${draft.name} has sent ${there.quantity} so far, not ${draft.quantity}`,
    );
  }
  adoptNode(archive, draft.node, now);
  if (there) return archive.saveChannel({ ...there, ...wanted, adopted: true, archived: false });
  return archive.createChannel(wanted, now);
}

function adoptNode(archive: WebParts['archive'], name: string, now: number): void {
  const node = archive.node(name) ?? archive.createNode({ name, label: '', note: '' }, now);
  if (!node.adopted) archive.saveNode({ ...node, adopted: true });
}
