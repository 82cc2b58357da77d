import type { OpenAPIHono } from '@hono/zod-openapi';
import { GasChange, GasChangeDraft, GasView, MOST_NOTED_LATE_MS } from '../../contract/gas.ts';
import { WatchError } from '../../watch/errors.ts';
import { type GasKnown, gasView } from '../gas-view.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { need } from './need.ts';

const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/gas',
  summary: 'The gas: pressure, flow and heat now, what is left and for how long, use per firing, changes',
  responses: { 200: json(GasView, 'What is known of the gas; never that it is safe') },
});
const note = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/gas/changes',
  summary: 'Note a cylinder that was put on, or a filling',
  request: { body: jsonBody(GasChangeDraft) },
  responses: { 201: json(GasChange, 'What is counted from now on') },
});
const takeBack = declareRoute('tend', {
  method: 'delete',
  path: '/api/v1/gas/changes/{id}',
  summary: 'Take back a change that was noted by mistake',
  request: { params: IdParam },
  responses: { 204: { description: 'Taken back' } },
});

/** What the gas is known by, as the page and the check before a start ask it. */
export function gasKnown({ archive, watch }: WebParts, now: number): GasKnown {
  const { config, state, use } = watch.gas(now);
  const used: GasKnown['used'] = ({ id }) => {
    const row = archive.firing(id);
    return row === null ? null : use.used(row, now);
  };
  return { archive, config, state, now, used };
}

export function gasRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock, watch } = parts;
  app.openapi(read, (c) => c.json(gasView(gasKnown(parts, clock.now())), 200));
  app.openapi(note, (c) => {
    const now = clock.now();
    const { at = now, ...draft } = c.req.valid('json');
    if (at > now || at < now - MOST_NOTED_LATE_MS) {
      throw new WatchError('invalid-request', '`at` must lie within the last four hours');
    }
    if (draft.furnaceId !== null) need(archive.furnace(draft.furnaceId), 'furnace', draft.furnaceId);
    const made = archive.addGasChange({ ...draft, at });
    watch.gasChanged(at);
    return c.json(made, 201);
  });
  app.openapi(takeBack, (c) => {
    const { id } = c.req.valid('param');
    const there = need(archive.gasChanges(1000).find((each) => each.id === id) ?? null, 'gas change', id);
    archive.removeGasChange(id);
    watch.gasChanged(there.at);
    return c.body(null, 204);
  });
}
