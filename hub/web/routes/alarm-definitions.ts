import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { definitionTable } from '../../alarms/definition-table.ts';
import { AlarmDefinitionEntry } from '../../contract/alarm-definition.ts';
import { words } from '../../contract/words/words.ts';
import { definitionsCsv } from '../alarm-tables.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute } from '../route.ts';

const definitions = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarm-definitions',
  summary: 'Every alarm that there is, with its rationalisation, the loudest first',
  request: { query: z.object({ format: z.enum(['json', 'csv']).default('json') }) },
  responses: {
    200: {
      description: 'The table of definitions',
      content: {
        'application/json': { schema: z.array(AlarmDefinitionEntry) },
        'text/csv': { schema: z.string() },
      },
    },
  },
});

export function alarmDefinitionRoutes(app: OpenAPIHono, { archive }: WebParts): void {
  app.openapi(definitions, (c) => {
    const table = definitionTable(archive.shop().settings, words('en').rationale);
    if (c.req.valid('query').format === 'json') return c.json(table, 200);
    c.header('content-type', 'text/csv; charset=utf-8; header=present');
    c.header('content-disposition', 'attachment; filename="alarm-definitions.csv"');
    return c.body(definitionsCsv(table), 200) as never;
  });
}
