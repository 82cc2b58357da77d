import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { reviewAlarms } from '../../alarms/review.ts';
import type { AlarmTransition } from '../../contract/alarm-journal.ts';
import { AlarmReview } from '../../contract/alarm-review.ts';
import { words } from '../../contract/words/words.ts';
import { WatchError } from '../../watch/errors.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, json, QueryInstant } from '../route.ts';

const DAY_MS = 86_400_000;
const USUAL_MS = 30 * DAY_MS;
const MOST_MS = 400 * DAY_MS;
/** Beyond this an answer would hold the hub up. */
const MOST_ENTRIES = 100_000;

const review = declareRoute('look', {
  method: 'get',
  path: '/api/v1/alarms/review',
  summary: 'How the alarms did, against the figures of EEMUA 191 and ISA-18.2',
  request: {
    query: z.object({
      from: QueryInstant.optional().describe('30 days before `to` unless told'),
      to: QueryInstant.optional().describe('Now unless told'),
    }),
  },
  responses: { 200: json(AlarmReview, 'The review') },
});

export function alarmReviewRoutes(app: OpenAPIHono, { archive, clock }: WebParts): void {
  app.openapi(review, (c) => {
    const { to = clock.now(), from = to - USUAL_MS } = c.req.valid('query');
    if (from >= to) throw new WatchError('invalid-request', '`from` must be before `to`');
    if (to - from > MOST_MS)
      throw new WatchError('too-much-work', 'a review takes 400 days at most: ask for less');
    const limit = MOST_ENTRIES + 1;
    const journal = archive.alarmJournal({ from, to, order: 'oldest-first', limit });
    if (journal.length > MOST_ENTRIES) {
      throw new WatchError('too-much-work', 'too many alarms in that time: ask for a shorter stretch');
    }
    const { displayUnit } = archive.shop().settings;
    const titleOf = ({ kind, params }: AlarmTransition) => words('en').alarm(kind, params, displayUnit).title;
    return c.json(reviewAlarms({ from, to, journal, standing: archive.alarmsStandingAt(to), titleOf }), 200);
  });
}
