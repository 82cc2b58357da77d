import { serveStatic } from '@hono/node-server/serve-static';
import { OpenAPIHono } from '@hono/zod-openapi';
import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import { z } from 'zod';
import { MOST_ATTACHMENT_BYTES } from '../contract/observation.ts';
import { PROBLEM_CODES, type ProblemCode } from '../contract/problem.ts';
import { FieldError } from '../watch/errors.ts';
import { type GuardRules, guard } from './guard.ts';
import type { WebParts } from './parts.ts';
import { answerInvalid, answerProblem } from './problem.ts';
import { declareRoute, json } from './route.ts';
import { airRoutes } from './routes/air.ts';
import { alarmRoutes } from './routes/alarms.ts';
import { bindingRoutes } from './routes/bindings.ts';
import { certificateRoutes } from './routes/certificates.ts';
import { channelRoutes } from './routes/channels.ts';
import { computeRoutes } from './routes/compute/routes.ts';
import { firingRoutes } from './routes/firings.ts';
import { furnaceFitRoutes } from './routes/furnace-fit.ts';
import { furnaceRoutes } from './routes/furnaces.ts';
import { gasRoutes } from './routes/gas.ts';
import { nodeRoutes } from './routes/nodes.ts';
import { notifyRoutes } from './routes/notify.ts';
import { pieceRoutes } from './routes/pieces.ts';
import { pieceBenchRoutes } from './routes/pieces-bench.ts';
import { pieceObservationRoutes } from './routes/pieces-observations.ts';
import { pieceTemplateRoutes } from './routes/pieces-templates.ts';
import { planningRoutes } from './routes/planning.ts';
import { probeHeatRoutes } from './routes/probe-heat.ts';
import { recordRoutes } from './routes/record.ts';
import { reviewRoutes } from './routes/review.ts';
import { reviewNoteRoutes } from './routes/review-notes.ts';
import { scheduleRoutes } from './routes/schedules.ts';
import { shopRoutes } from './routes/shop.ts';
import { steelRoutes } from './routes/steels.ts';

/** The largest request body: a long schedule or note is a few kilobytes. */
const MOST_BODY_BYTES = 262_144;
const ATTACHMENT_PATH = /^\/api\/v1\/pieces\/[^/]+\/attachments$/;

const health = declareRoute('look', {
  method: 'get',
  path: '/healthz',
  summary: 'Whether the hub stores and judges',
  responses: {
    200: json(
      z.object({ status: z.literal('ok'), version: z.string(), now: z.int() }),
      'It stores and judges',
    ),
  },
});

export function createApp(parts: WebParts, rules: GuardRules): OpenAPIHono {
  const app = new OpenAPIHono({
    defaultHook: (result, c) => (result.success ? undefined : answerInvalid(c, result.error)),
  });
  app.use(guard(rules));
  app.use(headers());
  app.use('/api/*', boundedBody());
  app.use('/api/*', emptyMeansDefaults);
  app.use('/api/*', async (c, next) => {
    await next();
    c.header('cache-control', 'no-store');
  });
  app.onError((fault, c) => answerFault(parts, fault, c));

  app.openapi(health, (c) => {
    if (!parts.archive.alive())
      return answerProblem(c, 'archive-unavailable', 'the archive does not answer') as never;
    if (!parts.judging())
      return answerProblem(c, 'internal-error', 'a judge has failed: see the log') as never;
    return c.json({ status: 'ok' as const, version: parts.version, now: parts.clock.now() }, 200);
  });
  for (const add of [
    shopRoutes,
    furnaceRoutes,
    furnaceFitRoutes,
    nodeRoutes,
    channelRoutes,
    bindingRoutes,
    planningRoutes,
    scheduleRoutes,
    reviewRoutes,
    reviewNoteRoutes,
    firingRoutes,
    recordRoutes,
    probeHeatRoutes,
    pieceRoutes,
    pieceTemplateRoutes,
    pieceObservationRoutes,
    pieceBenchRoutes,
    alarmRoutes,
    airRoutes,
    gasRoutes,
    computeRoutes,
    steelRoutes,
    certificateRoutes,
    notifyRoutes,
  ]) {
    add(app, parts);
  }
  app.doc31('/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Soakwatch hub',
      version: parts.version,
      license: { name: 'MIT' },
      description:
        'Readings, firings and alarms of one shop. Base units throughout: °C, Pa, ppm, kg; instants in epoch milliseconds UTC. An aid: it never replaces a certified CO alarm or the local code.',
    },
  });
  app.all('/api/*', (c) =>
    answerProblem(c, 'not-found', `there is no ${new URL(c.req.url).pathname}: see /openapi.json`),
  );
  dashboard(app, parts.dashboardDir);
  return app;
}

/** A photo or file may be larger than any document. */
function boundedBody(): MiddlewareHandler {
  const document = bodyLimit({ maxSize: MOST_BODY_BYTES, onError: (c) => tooLarge(c, MOST_BODY_BYTES) });
  const file = bodyLimit({
    maxSize: MOST_ATTACHMENT_BYTES,
    onError: (c) => tooLarge(c, MOST_ATTACHMENT_BYTES),
  });
  return (c, next) => (ATTACHMENT_PATH.test(c.req.path) ? file(c, next) : document(c, next));
}

/** A POST that announces JSON and sends nothing means the defaults, not a broken document. */
const emptyMeansDefaults: MiddlewareHandler = async (c, next) => {
  const announced = c.req.header('content-type') !== undefined;
  const length = c.req.header('content-length');
  const empty = length === '0' || (length === undefined && c.req.raw.body === null);
  if (c.req.method === 'POST' && announced && empty) {
    c.req.raw = new Request(c.req.raw, { body: '{}' });
  }
  return next();
};

function headers(): ReturnType<typeof secureHeaders> {
  return secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'self'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'", 'ws:', 'wss:'],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
    // Plain HTTP on the shop's own machine: a promise of HTTPS would lock it out.
    strictTransportSecurity: false,
    crossOriginResourcePolicy: 'same-origin',
    crossOriginOpenerPolicy: 'same-origin',
    referrerPolicy: 'no-referrer',
    xFrameOptions: 'DENY',
  });
}

/** The built screens. Any page address answers with the same page; the router in it does the rest. */
function dashboard(app: OpenAPIHono, root: string): void {
  app.get('/assets/*', async (c, next) => {
    await next();
    if (c.res.ok) c.header('cache-control', 'public, max-age=31536000, immutable');
  });
  app.use(serveStatic({ root }));
  app.get('*', async (c, next) => {
    if (/\.[a-z0-9]+$/i.test(new URL(c.req.url).pathname))
      return answerProblem(c, 'not-found', 'there is no such file');
    return serveStatic({ root, path: 'index.html' })(c, next);
  });
  app.notFound((c) =>
    answerProblem(c, 'not-found', 'there is no such page; has the dashboard been built? (npm run build)'),
  );
}

type AnyContext = Parameters<typeof answerProblem>[0];

function tooLarge(c: AnyContext, most: number): Response {
  return answerProblem(c, 'payload-too-large', `a request body may hold ${most} bytes at most`);
}

/** Exceptions become answers here and nowhere else. */
function answerFault(parts: WebParts, fault: unknown, c: AnyContext): Response {
  if (fault instanceof HTTPException)
    return answerProblem(c, codeForStatus(fault.status), fault.message || 'the request does not fit');
  if (fault instanceof FieldError)
    return answerProblem(c, fault.code, fault.message, [{ path: fault.path, message: fault.message }]);
  if (fault instanceof Error && 'code' in fault && typeof fault.code === 'string') {
    if (isProblemCode(fault.code)) return answerProblem(c, fault.code, fault.message);
    if (fault.code === 'disk') return answerProblem(c, 'archive-unavailable', fault.message);
  }
  parts.onFault(fault);
  return answerProblem(c, 'internal-error', 'the hub made a mistake; it has been written to its log');
}

function isProblemCode(code: string): code is ProblemCode {
  return Object.hasOwn(PROBLEM_CODES, code);
}

function codeForStatus(status: number): ProblemCode {
  if (status === 413) return 'payload-too-large';
  if (status === 415) return 'unsupported-media-type';
  return status >= 500 ? 'internal-error' : 'invalid-request';
}
