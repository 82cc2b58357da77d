import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { AcknowledgeRequest, Alarm, HeldBackAlarm } from '../../contract/alarm.ts';
import { AlarmGroupAnswer, groupAlarms } from '../../contract/alarm-groups.ts';
import { heldBackWords, worded } from '../../watch/alarm-words.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { alarmActionRoutes } from './alarm-actions.ts';
import { alarmDefinitionRoutes } from './alarm-definitions.ts';
import { alarmJournalRoutes } from './alarm-journal.ts';
import { alarmReviewRoutes } from './alarm-review.ts';

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
const groups = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms/groups',
  summary: 'Open alarms, the most urgent first, each with what follows from the same cause',
  responses: { 200: json(z.array(AlarmGroupAnswer), 'Groups') },
});
const heldBack = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms/held-back',
  summary: 'What a rule of the definitions holds back now, because another alarm tells the same trouble',
  responses: { 200: json(z.array(HeldBackAlarm), 'Conditions that hold and are not announced') },
});
const acknowledge = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/alarms/{id}/acknowledge',
  summary: 'A person has seen it',
  request: { params: IdParam, body: { ...jsonBody(AcknowledgeRequest), required: false } },
  responses: { 200: json(Alarm, 'The alarm as it is now') },
});

export function alarmRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock, watch } = parts;
  const unit = () => archive.shop().settings.displayUnit;
  app.openapi(list, (c) =>
    c.json(
      archive.alarms(c.req.valid('query')).map((row) => worded(row, unit())),
      200,
    ),
  );
  app.openapi(groups, (c) => {
    const open = watch.alarms.open().map((row) => worded(row, unit()));
    const found = groupAlarms(open).map(({ lead, followers }) => ({ lead, followers: [...followers] }));
    return c.json(found, 200);
  });
  app.openapi(heldBack, (c) =>
    c.json(
      watch.alarms.heldBack().map((held) => heldBackWords(held, unit())),
      200,
    ),
  );
  app.openapi(acknowledge, (c) => {
    const { by } = AcknowledgeRequest.parse(c.req.valid('json') ?? {});
    const row = watch.alarms.acknowledge(c.req.valid('param').id, by, clock.now());
    return c.json(worded(row, unit()), 200);
  });
  alarmActionRoutes(app, parts);
  alarmDefinitionRoutes(app, parts);
  alarmJournalRoutes(app, parts);
  alarmReviewRoutes(app, parts);
}
