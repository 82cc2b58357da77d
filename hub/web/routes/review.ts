import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { BatchStatistics, Measure, MOST_CHARTED, TemperingLearned } from '../../contract/batch-statistics.ts';
import { ComparedBy, FiringComparison, MOST_COMPARED } from '../../contract/comparison.ts';
import { Id } from '../../contract/shop.ts';
import { batchView } from '../batch-view.ts';
import { compareView } from '../compare-view.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, json } from '../route.ts';
import { temperingView } from '../tempering-view.ts';

/** Ids with commas between them, each once. */
const Ids = z
  .string()
  .transform((text) => [...new Set(text.split(',').filter(Boolean))])
  .pipe(
    z
      .array(Id)
      .min(1, 'name one firing or more, with commas between them')
      .max(MOST_COMPARED, `at most ${MOST_COMPARED} firings at once: more curves nobody tells apart`),
  )
  .openapi({ type: 'string', description: `Ids of 1 to ${MOST_COMPARED} firings, with commas between them` });

const compare = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings/compare',
  summary: 'Firings laid over each other, segment by segment, with envelope, plan, reference and drift',
  request: {
    query: z.object({
      ids: Ids,
      reference: Id.optional().describe('One of them; default: the reference of the schedule'),
      by: ComparedBy.default('seconds'),
      points: z.coerce.number().int().min(2).max(400).default(120).describe('Entries for each segment'),
    }),
  },
  responses: { 200: json(FiringComparison, 'The comparison') },
});
const statistics = declareRoute('look', {
  method: 'get',
  path: '/api/v1/statistics',
  summary: 'How firings of a schedule come out: control charts, tests for special causes, capability',
  request: {
    query: z.object({
      schedule: Id,
      furnace: Id.optional(),
      measure: Measure.default('soak-mean'),
      segment: z.coerce
        .number()
        .int()
        .min(0)
        .max(39)
        .optional()
        .describe('The soak to look at; default: the hottest'),
      limit: z.coerce.number().int().min(2).max(MOST_CHARTED).default(100).describe('The newest'),
    }),
  },
  responses: { 200: json(BatchStatistics, 'The statistics, the oldest point first') },
});
const tempering = declareRoute('look', {
  method: 'get',
  path: '/api/v1/statistics/tempering',
  summary: 'Hardness measured in this shop against tempering parameter, with its line and band',
  request: {
    query: z.object({ steel: z.string().max(80).optional().describe('Default: the one with most pieces') }),
  },
  responses: { 200: json(TemperingLearned, 'What the shop has learned of a steel') },
});

/** Before the routes of single firings: `compare` is no id. */
export function reviewRoutes(app: OpenAPIHono, parts: WebParts): void {
  app.openapi(compare, (c) => {
    const { ids, reference, by, points } = c.req.valid('query');
    return c.json(compareView(parts, { ids, reference, by, points }), 200);
  });
  app.openapi(statistics, (c) => c.json(batchView(parts, c.req.valid('query')), 200));
  app.openapi(tempering, (c) => c.json(temperingView(parts, c.req.valid('query').steel), 200));
}
