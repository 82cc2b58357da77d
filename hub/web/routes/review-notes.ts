import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { ShopChange, ShopChangeDraft } from '../../contract/batch-statistics.ts';
import { ReferenceDraft, ScheduleReference } from '../../contract/comparison.ts';
import { FieldError, WatchError } from '../../watch/errors.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody, QueryInstant } from '../route.ts';
import { need } from './need.ts';

const reference = declareRoute('look', {
  method: 'get',
  path: '/api/v1/schedules/{id}/reference',
  summary: 'The firing that a schedule is held against; null: none is chosen',
  request: { params: IdParam },
  responses: { 200: json(ScheduleReference.nullable(), 'The reference') },
});
const choose = declareRoute('set-up', {
  method: 'put',
  path: '/api/v1/schedules/{id}/reference',
  summary: 'Choose a good firing as the one that a schedule is held against',
  request: { params: IdParam, body: jsonBody(ReferenceDraft) },
  responses: { 200: json(ScheduleReference, 'The reference') },
});
const drop = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/schedules/{id}/reference',
  summary: 'Hold the schedule against no firing',
  request: { params: IdParam },
  responses: { 204: { description: 'None is chosen any more' } },
});
const changes = declareRoute('look', {
  method: 'get',
  path: '/api/v1/shop-changes',
  summary: 'What was changed in the shop: probes, calibrations, cylinders, furnaces',
  request: { query: z.object({ from: QueryInstant.optional(), to: QueryInstant.optional() }) },
  responses: { 200: json(z.array(ShopChange), 'The oldest first') },
});
const addChange = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/shop-changes',
  summary: 'Note that something was changed; it is never changed or taken back',
  request: { body: jsonBody(ShopChangeDraft) },
  responses: { 201: json(ShopChange, 'The note') },
});

export function reviewNoteRoutes(app: OpenAPIHono, { archive, clock }: WebParts): void {
  const known = (id: string): string => need(archive.schedule(id), 'schedule', id).id;
  app.openapi(reference, (c) => c.json(archive.scheduleReference(known(c.req.valid('param').id)), 200));
  app.openapi(choose, (c) => {
    const scheduleId = known(c.req.valid('param').id);
    const { firingId } = c.req.valid('json');
    const firing = need(archive.firing(firingId), 'firing', firingId);
    if (firing.schedule.id !== scheduleId)
      throw new WatchError('conflict', 'that firing followed another schedule: choose one of this schedule');
    if (firing.status !== 'finished')
      throw new WatchError('conflict', 'a reference is a firing that was finished: this one is not');
    return c.json(archive.chooseReference({ scheduleId, firingId, chosenAt: clock.now() }), 200);
  });
  app.openapi(drop, (c) => {
    archive.dropReference(known(c.req.valid('param').id));
    return c.body(null, 204);
  });
  app.openapi(changes, (c) => {
    const { from = 0, to = clock.now() } = c.req.valid('query');
    return c.json([...archive.shopChanges(from, to)], 200);
  });
  app.openapi(addChange, (c) => {
    const { at = clock.now(), furnaceId, ...said } = c.req.valid('json');
    if (at > clock.now()) throw new FieldError('/at', 'it cannot have been changed in the future');
    if (furnaceId !== null) need(archive.furnace(furnaceId), 'furnace', furnaceId);
    return c.json(archive.addShopChange({ ...said, at, furnaceId, channelId: null }), 201);
  });
}
