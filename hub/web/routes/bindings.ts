import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { Binding, BindingDraft } from '../../contract/shop.ts';
import { findUnit } from '../../contract/units.ts';
import { WatchError } from '../../watch/errors.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/bindings',
  summary: 'Foreign topics bound to channels',
  responses: { 200: json(z.array(Binding), 'Bindings') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/bindings',
  summary: 'Bind a foreign topic to a channel',
  request: { body: jsonBody(BindingDraft) },
  responses: { 201: json(Binding, 'The new binding') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/bindings/{id}',
  summary: 'Remove a binding: the channel and its readings stay',
  request: { params: IdParam },
  responses: { 204: { description: 'Removed' } },
});

export function bindingRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock } = parts;
  app.openapi(list, (c) => c.json([...archive.bindings()], 200));
  app.openapi(create, (c) => {
    const draft = c.req.valid('json');
    if (findUnit(draft.unit, draft.quantity) === undefined) {
      throw new WatchError('invalid-request', `${draft.unit} is not a unit of ${draft.quantity}`);
    }
    if (draft.node === null && !draft.topic.split('/').includes('+')) {
      throw new WatchError(
        'invalid-request',
        'name a node, or put a + in the topic where the node name stands',
      );
    }
    const binding = archive.createBinding(draft, clock.now());
    parts.catalogueChanged();
    return c.json(binding, 201);
  });
  app.openapi(remove, (c) => {
    const { id } = c.req.valid('param');
    if (!archive.deleteBinding(id))
      throw new WatchError('not-found', `there is no binding with the id ${id}`);
    parts.catalogueChanged();
    return c.body(null, 204);
  });
}
