import type { OpenAPIHono } from '@hono/zod-openapi';
import { Bench } from '../../contract/bench.ts';
import { FiringDetail } from '../../contract/firing.ts';
import { LoadChange } from '../../contract/piece.ts';
import { benchList } from '../../watch/bench-list.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';

const bench = declareRoute('look', {
  method: 'get',
  path: '/api/v1/bench',
  summary: 'What is due next for every piece, and which pieces could share a firing: a proposal',
  responses: { 200: json(Bench, 'The bench list as the shop stands now') },
});
const changeLoad = declareRoute('tend', {
  method: 'put',
  path: '/api/v1/firings/{id}/pieces',
  summary: 'Say what lies in a running firing, as a whole: it is noted, and judged again from its start',
  request: { params: IdParam, body: jsonBody(LoadChange) },
  responses: { 200: json(FiringDetail, 'The firing as it is now') },
});

export function pieceBenchRoutes(app: OpenAPIHono, { archive, clock, watch }: WebParts): void {
  app.openapi(bench, (c) => c.json(benchList(archive, clock.now()), 200));
  app.openapi(changeLoad, (c) => c.json(watch.changeLoad(c.req.valid('param').id, c.req.valid('json')), 200));
}
