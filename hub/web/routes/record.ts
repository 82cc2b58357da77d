import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { FiringRecord } from '../../contract/firing.ts';
import { DisplayUnit } from '../../contract/schedule.ts';
import type { WebParts } from '../parts.ts';
import { firingCsv, firingRecord } from '../record.ts';
import { declareRoute, IdParam } from '../route.ts';
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

export function recordRoutes(app: OpenAPIHono, { archive, clock, watch }: WebParts): void {
  app.openapi(record, (c) => {
    const firing = watch.firings.detail(c.req.valid('param').id);
    const { format, unit } = c.req.valid('query');
    const whole = firingRecord(archive, firing, clock.now());
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
}
