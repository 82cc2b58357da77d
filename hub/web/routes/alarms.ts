import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { AcknowledgeRequest, Alarm } from '../../contract/alarm.ts';
import { worded } from '../../watch/alarm-words.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms',
  summary: 'Alarms, newest first',
  request: {
    query: z.object({
      state: z.enum(['open', 'all']).default('all').describe('open: everything that is not back to normal'),
      firingId: z.string().optional(),
      limit: z.coerce.number().int().min(1).max(1000).default(100),
    }),
  },
  responses: { 200: json(z.array(Alarm), 'Alarms with their words') },
});
const acknowledge = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/alarms/{id}/acknowledge',
  summary: 'A person has seen it',
  request: { params: IdParam, body: { ...jsonBody(AcknowledgeRequest), required: false } },
  responses: { 200: json(Alarm, 'The alarm as it is now') },
});

export function alarmRoutes(app: OpenAPIHono, { archive, clock, watch }: WebParts): void {
  const unit = () => archive.shop().settings.displayUnit;
  app.openapi(list, (c) =>
    c.json(
      archive.alarms(c.req.valid('query')).map((row) => worded(row, unit())),
      200,
    ),
  );
  app.openapi(acknowledge, (c) => {
    const { by } = AcknowledgeRequest.parse(c.req.valid('json') ?? {});
    const row = watch.alarms.acknowledge(c.req.valid('param').id, by, clock.now());
    return c.json(worded(row, unit()), 200);
  });
}
