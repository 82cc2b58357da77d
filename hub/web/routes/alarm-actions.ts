import type { OpenAPIHono } from '@hono/zod-openapi';
import type { z } from 'zod';
import type { Press } from '../../alarms/book.ts';
import {
  Alarm,
  OutOfServiceRequest,
  ResetAlarmRequest,
  ReturnToServiceRequest,
  ShelveRequest,
  UnshelveRequest,
} from '../../contract/alarm.ts';
import { worded } from '../../watch/alarm-words.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody, type RouteRule } from '../route.ts';

/** What a person does to an alarm beside acknowledging it. What the life cycle refuses has a stable code. */

function action<const P extends string, S extends z.ZodType>(
  rule: RouteRule,
  path: P,
  summary: string,
  body: S,
) {
  return declareRoute(rule, {
    method: 'post',
    path: `/api/v1/alarms/{id}/${path}` as const,
    summary,
    request: { params: IdParam, body: jsonBody(body) },
    responses: { 200: json(Alarm, 'The alarm as it is now') },
  });
}

const shelve = action('tend', 'shelve', 'Put it off; it comes back by itself at its end', ShelveRequest);
const unshelve = action('tend', 'unshelve', 'Take it up before its end', UnshelveRequest);
const takeOut = action(
  'set-up',
  'out-of-service',
  'Take it out for work, until it is returned',
  OutOfServiceRequest,
);
const giveBack = action(
  'set-up',
  'return-to-service',
  'The work is done and tested: it counts again',
  ReturnToServiceRequest,
);
const reset = action('tend', 'reset', 'Let a latched alarm go once it is seen and over', ResetAlarmRequest);

export function alarmActionRoutes(app: OpenAPIHono, { archive, clock, watch }: WebParts): void {
  const press = (id: string, event: Press['event'], who: { by: string; why?: string | undefined }): Alarm => {
    const { by, why } = who;
    const what = { event, at: clock.now(), by, ...(why === undefined ? {} : { why }) };
    return worded(watch.alarms.press(id, what), archive.shop().settings.displayUnit);
  };
  app.openapi(shelve, (c) => {
    const { minutes, until, by, why } = c.req.valid('json');
    const at = clock.now();
    const end = until ?? at + Math.round((minutes ?? 0) * 60_000);
    const row = watch.alarms.shelve(c.req.valid('param').id, { at, by, why, until: end });
    return c.json(worded(row, archive.shop().settings.displayUnit), 200);
  });
  app.openapi(unshelve, (c) => c.json(press(c.req.valid('param').id, 'unshelve', c.req.valid('json')), 200));
  app.openapi(takeOut, (c) =>
    c.json(press(c.req.valid('param').id, 'take-out-of-service', c.req.valid('json')), 200),
  );
  app.openapi(giveBack, (c) =>
    c.json(press(c.req.valid('param').id, 'return-to-service', c.req.valid('json')), 200),
  );
  app.openapi(reset, (c) => c.json(press(c.req.valid('param').id, 'reset', c.req.valid('json')), 200));
}
