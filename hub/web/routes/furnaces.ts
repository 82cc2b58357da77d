import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { Furnace, FurnaceDraft, FurnacePatch } from '../../contract/shop.ts';
import { WatchError } from '../../watch/errors.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { defined, need } from './need.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/furnaces',
  summary: 'Every furnace',
  responses: { 200: json(z.array(Furnace), 'Furnaces, oldest first') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/furnaces',
  summary: 'Add a furnace',
  request: { body: jsonBody(FurnaceDraft) },
  responses: { 201: json(Furnace, 'The new furnace') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/furnaces/{id}',
  summary: 'One furnace',
  request: { params: IdParam },
  responses: { 200: json(Furnace, 'The furnace') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/furnaces/{id}',
  summary: 'Change a furnace',
  request: { params: IdParam, body: jsonBody(FurnacePatch) },
  responses: { 200: json(Furnace, 'The furnace as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/furnaces/{id}',
  summary: 'Put a furnace away: its firings stay, nothing new can start in it',
  request: { params: IdParam },
  responses: { 204: { description: 'Put away' } },
});

export function furnaceRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, bus, clock, watch } = parts;
  const find = (id: string): Furnace => need(archive.furnace(id), 'furnace', id);
  const changed = (furnace: Furnace): Furnace => {
    watch.setupChanged();
    bus.tell({ type: 'furnace', furnace });
    return furnace;
  };
  app.openapi(list, (c) =>
    c.json(
      [...archive.furnaces()].filter((f) => !f.archived),
      200,
    ),
  );
  app.openapi(create, (c) => c.json(changed(archive.createFurnace(c.req.valid('json'), clock.now())), 201));
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(change, (c) => {
    const furnace = { ...find(c.req.valid('param').id), ...defined(c.req.valid('json')) };
    return c.json(changed(archive.saveFurnace(furnace, clock.now())), 200);
  });
  app.openapi(remove, (c) => {
    const furnace = find(c.req.valid('param').id);
    if (archive.runningFirings().some((row) => row.furnaceId === furnace.id)) {
      throw new WatchError('in-use', `${furnace.name} is in a firing: finish that first`);
    }
    changed(archive.saveFurnace({ ...furnace, archived: true }, clock.now()));
    return c.body(null, 204);
  });
}
