import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import {
  ConfirmRequest,
  FinishRequest,
  FiringDetail,
  FiringDraft,
  FiringPatch,
  FiringStatus,
  FiringSummary,
  FiringVerdict,
  Note,
  NoteDraft,
} from '../../contract/firing.ts';
import { WatchError } from '../../watch/errors.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody, QueryInstant } from '../route.ts';
import { defined, need } from './need.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings',
  summary: 'Firings, newest first',
  request: {
    query: z.object({
      status: FiringStatus.optional(),
      furnaceId: z.string().optional(),
      scheduleId: z.string().optional(),
      verdict: FiringVerdict.optional(),
      simulated: z
        .enum(['yes', 'no'])
        .transform((word) => word === 'yes')
        .optional(),
      q: z
        .string()
        .max(200)
        .optional()
        .describe('Words that must all stand in title, note, schedule, a mark of the load, or the furnace'),
      from: QueryInstant.optional().describe('Begun at or after this instant'),
      before: QueryInstant.optional().describe('Begun before this instant'),
      after: z.string().max(64).optional().describe('Id of the last row of the page before'),
      limit: z.coerce.number().int().min(1).max(500).default(50),
    }),
  },
  responses: { 200: json(z.array(FiringSummary), 'One row a firing') },
});
const create = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/firings',
  summary: 'Start a firing (or record one that is over)',
  request: { body: jsonBody(FiringDraft) },
  responses: { 201: json(FiringDetail, 'The firing with its judged state') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings/{id}',
  summary: 'One firing with its judged state',
  request: { params: IdParam },
  responses: { 200: json(FiringDetail, 'The firing') },
});
const change = declareRoute('tend', {
  method: 'patch',
  path: '/api/v1/firings/{id}',
  summary: 'Change title or note',
  request: { params: IdParam, body: jsonBody(FiringPatch) },
  responses: { 200: json(FiringDetail, 'The firing as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/firings/{id}',
  summary: 'Delete the record of a firing that is over: the readings stay',
  request: { params: IdParam },
  responses: { 204: { description: 'Deleted' } },
});
const finish = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/firings/{id}/finish',
  summary: 'End a firing',
  request: { params: IdParam, body: { ...jsonBody(FinishRequest), required: false } },
  responses: { 200: json(FiringDetail, 'The finished firing') },
});
const confirm = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/firings/{id}/confirm',
  summary: 'The smith has done what the next move asked: go on to the next segment',
  request: { params: IdParam, body: jsonBody(ConfirmRequest) },
  responses: { 200: json(FiringDetail, 'The firing as it is now') },
});
const notes = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings/{id}/notes',
  summary: 'Notes of a firing',
  request: { params: IdParam },
  responses: { 200: json(z.array(Note), 'Notes in time order') },
});
const addNote = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/firings/{id}/notes',
  summary: 'Add a note',
  request: { params: IdParam, body: jsonBody(NoteDraft) },
  responses: { 201: json(Note, 'The note') },
});

export function firingRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock, watch } = parts;
  const known = (id: string): string => need(archive.firing(id), 'firing', id).id;
  app.openapi(list, (c) => c.json(watch.firings.summaries(c.req.valid('query')), 200));
  app.openapi(create, (c) => c.json(watch.startFiring(c.req.valid('json')), 201));
  app.openapi(read, (c) => c.json(watch.firings.detail(c.req.valid('param').id), 200));
  app.openapi(change, (c) => {
    const id = known(c.req.valid('param').id);
    watch.firings.rename(id, defined(c.req.valid('json')));
    return c.json(watch.firings.detail(id), 200);
  });
  app.openapi(remove, (c) => {
    const row = need(archive.firing(c.req.valid('param').id), 'firing', c.req.valid('param').id);
    if (row.status === 'running')
      throw new WatchError('in-use', 'this firing is running: finish it before deleting it');
    archive.deleteFiring(row.id);
    return c.body(null, 204);
  });
  app.openapi(finish, (c) => {
    const { at, abandoned } = FinishRequest.parse(c.req.valid('json') ?? {});
    return c.json(watch.finishFiring(c.req.valid('param').id, at, abandoned), 200);
  });
  app.openapi(confirm, (c) => {
    const { segment } = c.req.valid('json');
    return c.json(watch.firings.confirm(c.req.valid('param').id, segment, clock.now()), 200);
  });
  app.openapi(notes, (c) => c.json([...archive.notes(known(c.req.valid('param').id))], 200));
  app.openapi(addNote, (c) => {
    const firingId = known(c.req.valid('param').id);
    const { at, text, by } = c.req.valid('json');
    const now = clock.now();
    return c.json(archive.addNote({ firingId, at: at ?? now, text, by, createdAt: now }), 201);
  });
}
