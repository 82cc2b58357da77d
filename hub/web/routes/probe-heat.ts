import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { FiringProbe, TimeAboveLimit } from '../../contract/probe.ts';
import type { WebParts } from '../parts.ts';
import { timeAboveDuring, timeAboveEver } from '../probe-heat.ts';
import { recordUncertainty } from '../record-uncertainty.ts';
import { declareRoute, IdParam, json } from '../route.ts';
import { need } from './need.ts';

const ofFiring = declareRoute('look', {
  method: 'get',
  path: '/api/v1/firings/{id}/probes',
  summary:
    'How far each watched channel of a firing can be trusted, and how long its probe was above its limit',
  request: { params: IdParam },
  responses: { 200: json(z.array(FiringProbe), 'The watched channels') },
});
const ofChannel = declareRoute('look', {
  method: 'get',
  path: '/api/v1/channels/{id}/time-above',
  summary: "Hours above the recommended limit of a channel's probe, over all that it ever sent",
  request: { params: IdParam },
  responses: { 200: json(TimeAboveLimit, 'What was counted; ask again while it is not complete') },
});

export function probeHeatRoutes(app: OpenAPIHono, { archive, clock, watch }: WebParts): void {
  app.openapi(ofFiring, (c) => {
    const firing = watch.firings.detail(c.req.valid('param').id);
    const watched = archive.channels().filter(({ id }) => firing.watchedChannels.includes(id));
    const told = recordUncertainty(firing, watched, archive.shop().settings.displayUnit);
    const to = firing.endedAt ?? clock.now();
    const answer = watched.flatMap((channel) => {
      const uncertainty = told.find((each) => each.channel === channel.id);
      if (uncertainty === undefined) return [];
      return [{ uncertainty, above: timeAboveDuring(archive, channel, firing.startedAt, to) }];
    });
    return c.json(answer, 200);
  });
  app.openapi(ofChannel, (c) => {
    const { id } = c.req.valid('param');
    const channel = need(archive.channel(id), 'channel', id);
    return c.json(timeAboveEver(archive, channel, clock.now()), 200);
  });
}
