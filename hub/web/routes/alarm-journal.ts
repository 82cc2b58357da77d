import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { checkChain } from '../../archive/alarm-chain.ts';
import { AlarmJournalCheck, AlarmJournalEntry } from '../../contract/alarm-journal.ts';
import { journalCsv, journalEntries, journalLines } from '../alarm-tables.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, json, QueryInstant } from '../route.ts';
import { streamOf } from '../stream.ts';

const Span = { from: QueryInstant.optional(), to: QueryInstant.optional() };

const page = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms/journal',
  summary:
    'Everything that happened to alarms, newest first; `before` the last number of a page for the next',
  request: {
    query: z.object({
      ...Span,
      alarmId: z.string().max(64).optional(),
      before: z.coerce.number().int().min(1).optional(),
      limit: z.coerce.number().int().min(1).max(1000).default(100),
    }),
  },
  responses: { 200: json(z.array(AlarmJournalEntry), 'Entries with their hashes') },
});
const whole = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms/journal/export',
  summary: 'The journal as a file, oldest first: a canonical JSON object a line, or CSV',
  request: { query: z.object({ ...Span, format: z.enum(['jsonl', 'csv']).default('jsonl') }) },
  responses: {
    200: {
      description: 'The journal',
      content: { 'application/jsonl': { schema: z.string() }, 'text/csv': { schema: z.string() } },
    },
  },
});
const verification = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms/journal/verification',
  summary: 'Whether the chain of hashes holds, and where it breaks',
  request: {
    query: z
      .object({
        seq: z.coerce.number().int().min(1).optional().describe('Number of a head that was kept earlier'),
        hash: z
          .string()
          .regex(/^[0-9a-f]{64}$/, 'the 64 hexadecimal digits of a hash')
          .optional(),
      })
      .refine(({ seq, hash }) => (seq === undefined) === (hash === undefined), {
        path: ['hash'],
        message: 'a kept head has both a seq and a hash',
      }),
  },
  responses: { 200: json(AlarmJournalCheck, 'What was found') },
});

export function alarmJournalRoutes(app: OpenAPIHono, { archive }: WebParts): void {
  app.openapi(page, (c) =>
    c.json([...archive.alarmJournal({ ...c.req.valid('query'), order: 'newest-first' })], 200),
  );
  app.openapi(whole, (c) => {
    const { format, ...span } = c.req.valid('query');
    const entries = journalEntries(archive, span);
    const type = format === 'csv' ? 'text/csv; charset=utf-8; header=present' : 'application/jsonl';
    return new Response(streamOf(format === 'csv' ? journalCsv(entries) : journalLines(entries)), {
      headers: {
        'content-type': type,
        'content-disposition': `attachment; filename="alarm-journal.${format}"`,
        'cache-control': 'no-store',
      },
    }) as never;
  });
  app.openapi(verification, (c) => {
    const { seq, hash } = c.req.valid('query');
    const kept = seq === undefined || hash === undefined ? null : { seq, hash };
    return c.json(checkChain(journalEntries(archive, {}), kept), 200);
  });
}
