import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { REMINDER_CODES, REMINDER_STANDING, Reminder } from '../../contract/reminder.ts';
import { RouteTemplate, RouteTemplateDraft } from '../../contract/route-template.ts';
import { words } from '../../contract/words/words.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { need } from './need.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/route-templates',
  summary: 'Templates of routes, by name',
  responses: { 200: json(z.array(RouteTemplate), 'Templates') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/route-templates',
  summary: 'Add a template',
  request: { body: jsonBody(RouteTemplateDraft) },
  responses: { 201: json(RouteTemplate, 'The new template') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/route-templates/{id}',
  summary: 'One template',
  request: { params: IdParam },
  responses: { 200: json(RouteTemplate, 'The template') },
});
const save = declareRoute('set-up', {
  method: 'put',
  path: '/api/v1/route-templates/{id}',
  summary: 'Change a template: pieces keep the route that they took from it',
  request: { params: IdParam, body: jsonBody(RouteTemplateDraft) },
  responses: { 200: json(RouteTemplate, 'The template as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/route-templates/{id}',
  summary: 'Delete a template: pieces keep the route that they took from it',
  request: { params: IdParam },
  responses: { 204: { description: 'Deleted' } },
});
const reminders = declareRoute('look', {
  method: 'get',
  path: '/api/v1/reminders',
  summary: 'What the trade reminds itself of at a step: common practice, no source',
  responses: { 200: json(z.array(Reminder), 'Reminders') },
});

export function pieceTemplateRoutes(app: OpenAPIHono, { archive, clock }: WebParts): void {
  const find = (id: string): RouteTemplate => need(archive.routeTemplate(id), 'route template', id);
  app.openapi(list, (c) => c.json([...archive.routeTemplates()], 200));
  app.openapi(create, (c) => c.json(archive.createRouteTemplate(c.req.valid('json'), clock.now()), 201));
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(save, (c) => {
    const { id } = find(c.req.valid('param').id);
    return c.json(archive.saveRouteTemplate(id, c.req.valid('json'), clock.now()), 200);
  });
  app.openapi(remove, (c) => {
    archive.deleteRouteTemplate(find(c.req.valid('param').id).id);
    return c.body(null, 204);
  });
  app.openapi(reminders, (c) => {
    const said = words('en').reminder;
    return c.json(
      REMINDER_CODES.map((code) => ({ code, text: said[code], ...REMINDER_STANDING })),
      200,
    );
  });
}
