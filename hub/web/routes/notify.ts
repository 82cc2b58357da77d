import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import {
  NotifyLogEntry,
  NotifySettings,
  NotifySettingsPatch,
  NotifyTestResult,
  NotifyWay,
  NotifyWayDraft,
  NotifyWayPatch,
} from '../../contract/notify.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';

const WAYS = '/api/v1/notify/ways';
const ONE = `${WAYS}/{id}` as const;

const list = declareRoute('look', {
  method: 'get',
  path: WAYS,
  summary: 'The ways of reaching people, without their secrets',
  responses: { 200: json(z.array(NotifyWay), 'Ways, the oldest first') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: WAYS,
  summary: 'Add a way: e-mail, a signed webhook, or the phone of a push subscription',
  request: { body: jsonBody(NotifyWayDraft) },
  responses: { 201: json(NotifyWay, 'The new way') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: ONE,
  summary: 'Change a way; a secret that is left out stays',
  request: { params: IdParam, body: jsonBody(NotifyWayPatch) },
  responses: { 200: json(NotifyWay, 'The way as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: ONE,
  summary: 'Remove a way and its secrets',
  request: { params: IdParam },
  responses: { 204: { description: 'Removed' } },
});
const test = declareRoute('set-up', {
  method: 'post',
  path: `${ONE}/test`,
  summary: 'Send a test by this way and wait for what comes of it',
  request: { params: IdParam },
  responses: { 200: json(NotifyTestResult, 'What came of it') },
});
const settings = declareRoute('look', {
  method: 'get',
  path: '/api/v1/notify/settings',
  summary: 'What all ways share: clock, light and heartbeat, own networks, ping, the key for push',
  responses: { 200: json(NotifySettings, 'The settings') },
});
const changeSettings = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/notify/settings',
  summary: 'Change what all ways share',
  request: { body: jsonBody(NotifySettingsPatch) },
  responses: { 200: json(NotifySettings, 'The settings as they are now') },
});
const log = declareRoute('look', {
  method: 'get',
  path: '/api/v1/notify/log',
  summary: 'What was sent and what failed, newest first',
  request: { query: z.object({ limit: z.coerce.number().int().min(1).max(1000).default(100) }) },
  responses: { 200: json(z.array(NotifyLogEntry), 'Lines of the log') },
});

/** Reaching people. */
export function notifyRoutes(app: OpenAPIHono, { notify }: WebParts): void {
  app.openapi(list, (c) => c.json([...notify.ways()], 200));
  app.openapi(create, (c) => c.json(notify.createWay(c.req.valid('json')), 201));
  app.openapi(change, (c) => c.json(notify.changeWay(c.req.valid('param').id, c.req.valid('json')), 200));
  app.openapi(remove, (c) => {
    notify.removeWay(c.req.valid('param').id);
    return c.body(null, 204);
  });
  app.openapi(test, async (c) => c.json(await notify.test(c.req.valid('param').id), 200));
  app.openapi(settings, (c) => c.json(notify.settings(), 200));
  app.openapi(changeSettings, (c) => c.json(notify.changeSettings(c.req.valid('json')), 200));
  app.openapi(log, (c) => c.json([...notify.log(c.req.valid('query').limit)], 200));
}
