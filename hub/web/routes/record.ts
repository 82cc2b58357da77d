import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { FiringDetail } from '../../contract/firing.ts';
import { FIRING_RECORD_SCHEMA, FiringFindings, FiringRecord } from '../../contract/firing-record.ts';
import { DisplayUnit } from '../../contract/schedule.ts';
import type { WebParts } from '../parts.ts';
import { firingCsv, firingRecord } from '../record.ts';
import { firingFindings } from '../record-findings.ts';
import { firingRecordSchema } from '../record-schema.ts';
import { declareRoute, IdParam, json } from '../route.ts';
import { streamOf } from '../stream.ts';

const record = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings/{id}/record',
  summary: 'The whole record of a firing, to keep or to take elsewhere',
  request: {
    params: IdParam,
    query: z.object({
      format: z.enum(['json', 'csv']).default('json'),
      unit: DisplayUnit.default('Cel').describe('Temperatures of the CSV: Cel or [degF]'),
    }),
  },
  responses: {
    200: {
      description: 'The record',
      content: { 'application/json': { schema: FiringRecord }, 'text/csv': { schema: z.string() } },
    },
  },
});

const findings = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings/{id}/findings',
  summary: 'What came of a firing for each of its pieces, without its readings',
  request: { params: IdParam },
  responses: { 200: json(FiringFindings, 'Verdicts, figures, probes in force, carbon monoxide') },
});
const rejudge = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/firings/{id}/rejudge',
  summary: 'Judge a firing that is over by the rules of today; what was said before is kept beside it',
  request: { params: IdParam },
  responses: { 200: json(FiringDetail, 'The firing with its new judgement') },
});
const schema = declareRoute('look', {
  method: 'get',
  path: FIRING_RECORD_SCHEMA,
  summary: 'The JSON Schema of a record',
  responses: {
    200: {
      description: 'The schema, draft 2020-12',
      content: { 'application/schema+json': { schema: z.record(z.string(), z.unknown()) } },
    },
  },
});

export function recordRoutes(app: OpenAPIHono, { archive, clock, watch }: WebParts): void {
  app.openapi(record, (c) => {
    const firing = watch.firings.detail(c.req.valid('param').id);
    const { format, unit } = c.req.valid('query');
    const whole = firingRecord(archive, watch, firing, clock.now());
    const name = `firing-${new Date(firing.startedAt).toISOString().slice(0, 16).replaceAll(':', '')}`;
    if (format === 'json') {
      c.header('content-disposition', `attachment; filename="${name}.json"`);
      return c.json(whole, 200);
    }
    return new Response(streamOf(firingCsv(whole, unit)), {
      headers: {
        'content-type': 'text/csv; charset=utf-8; header=present',
        'content-disposition': `attachment; filename="${name}.csv"`,
        'cache-control': 'no-store',
      },
    }) as never;
  });
  app.openapi(findings, (c) => {
    const firing = watch.firings.detail(c.req.valid('param').id);
    return c.json(firingFindings({ archive, watch, now: clock.now() }, firing), 200);
  });
  app.openapi(rejudge, (c) => c.json(watch.firings.judgeAgain(c.req.valid('param').id, clock.now()), 200));
  app.openapi(
    schema,
    () =>
      new Response(JSON.stringify(firingRecordSchema()), {
        headers: { 'content-type': 'application/schema+json' },
      }) as never,
  );
}
