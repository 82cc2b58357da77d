import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { Schedule, ScheduleDraft } from '../../contract/schedule.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { need } from './need.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/schedules',
  summary: 'Every schedule in its newest version',
  responses: { 200: json(z.array(Schedule), 'Schedules, by name') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/schedules',
  summary: 'Add a schedule',
  request: { body: jsonBody(ScheduleDraft) },
  responses: { 201: json(Schedule, 'The new schedule, version 1') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/schedules/{id}',
  summary: 'One schedule in its newest version',
  request: { params: IdParam },
  responses: { 200: json(Schedule, 'The schedule') },
});
const revise = declareRoute('set-up', {
  method: 'put',
  path: '/api/v1/schedules/{id}',
  summary: 'Make a new version: firings keep the version they started under',
  request: { params: IdParam, body: jsonBody(ScheduleDraft) },
  responses: { 200: json(Schedule, 'The new version') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/schedules/{id}',
  summary: 'Put a schedule away: firings keep their copy',
  request: { params: IdParam },
  responses: { 204: { description: 'Put away' } },
});

export function scheduleRoutes(app: OpenAPIHono, { archive, clock }: WebParts): void {
  const find = (id: string): Schedule => need(archive.schedule(id), 'schedule', id);
  app.openapi(list, (c) =>
    c.json(
      [...archive.schedules()].filter((s) => !s.archived),
      200,
    ),
  );
  app.openapi(create, (c) => c.json(archive.createSchedule(c.req.valid('json'), clock.now()), 201));
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(revise, (c) => {
    const { id } = find(c.req.valid('param').id);
    return c.json(archive.reviseSchedule(id, c.req.valid('json'), clock.now()), 200);
  });
  app.openapi(remove, (c) => {
    archive.archiveSchedule(find(c.req.valid('param').id).id, clock.now());
    return c.body(null, 204);
  });
}
