import type { OpenAPIHono } from '@hono/zod-openapi';
import { AirTags, AirTagsRequest, AirView } from '../../contract/air.ts';
import { airView } from '../air-view.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, json, jsonBody } from '../route.ts';

const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/air',
  summary: 'The air: now, exposure against the limits, the blood as an estimate, ventilation',
  responses: { 200: json(AirView, 'What is known of the air; never that it is good') },
});
const say = declareRoute('tend', {
  method: 'put',
  path: '/api/v1/air/tags',
  summary: 'Say how the shop stands now: doors, windows, fans',
  request: { body: jsonBody(AirTagsRequest) },
  responses: { 200: json(AirTags, 'What holds from now on') },
});

export function airRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock, watch } = parts;
  app.openapi(read, (c) => {
    const now = clock.now();
    const { config, state } = watch.air(now);
    return c.json(airView({ archive, config, state, now }) as AirView, 200);
  });
  app.openapi(say, (c) => {
    const { tags, by } = c.req.valid('json');
    const said = { at: clock.now(), tags: [...new Set(tags)], by };
    archive.setAirTags(said);
    return c.json(said, 200);
  });
}
