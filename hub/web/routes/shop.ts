import type { OpenAPIHono } from '@hono/zod-openapi';
import { About, Shop, ShopSettings, ShopSettingsPatch } from '../../contract/shop.ts';
import type { WebParts } from '../parts.ts';
import { answerInvalid } from '../problem.ts';
import { declareRoute, json, jsonBody } from '../route.ts';

const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/shop',
  summary: 'The shop, its settings, and where nodes connect',
  responses: { 200: json(About, 'The shop') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/shop',
  summary: 'Change settings and limits',
  request: { body: jsonBody(ShopSettingsPatch) },
  responses: { 200: json(Shop, 'The shop as it is now') },
});

export function shopRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock } = parts;
  app.openapi(read, (c) =>
    c.json(
      { shop: archive.shop(), mqtt: parts.mqttAddress(), version: parts.version, now: clock.now() },
      200,
    ),
  );
  app.openapi(change, (c) => {
    const whole = ShopSettings.safeParse({ ...archive.shop().settings, ...c.req.valid('json') });
    if (!whole.success) return answerInvalid(c, whole.error) as never;
    const shop = archive.saveSettings(whole.data, clock.now());
    parts.watch.setupChanged();
    parts.bus.tell({ type: 'shop', shop });
    return c.json(shop, 200);
  });
}
