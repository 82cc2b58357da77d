import { createRoute, type RouteConfig, z } from '@hono/zod-openapi';
import { Problem } from '../contract/problem.ts';

/**
 * Who may use a route. Nobody signs in yet, so every rule lets everybody on this machine through; the rule is
 * already part of each route, so that sign-in can read it from one place.
 */
export type RouteRule = 'look' | 'tend' | 'set-up';

const declared: { readonly method: string; readonly path: string; readonly rule: RouteRule }[] = [];

/** Every API route with its rule. */
export function declaredRoutes(): typeof declared {
  return declared;
}

const problemAnswer = {
  description: 'A problem (RFC 9457) with a stable code',
  content: { 'application/problem+json': { schema: Problem } },
};

/** Declares a route: its rule is kept beside it, and its problem answers are in the document. */
export function declareRoute<const R extends RouteConfig>(rule: RouteRule, config: R) {
  declared.push({ method: config.method, path: config.path, rule });
  return createRoute({
    ...config,
    responses: { ...config.responses, '4XX': problemAnswer, '5XX': problemAnswer },
  });
}

export function json<S extends z.ZodType>(schema: S, description: string) {
  return { description, content: { 'application/json': { schema } } };
}

export function jsonBody<S extends z.ZodType>(schema: S) {
  return { required: true, content: { 'application/json': { schema } } };
}

export const IdParam = z.object({ id: z.string().min(1).max(64) });

/** An instant in a query: epoch milliseconds or ISO 8601 with an offset. */
export const QueryInstant = z
  .string()
  .transform((text, ctx) => {
    const at = /^-?\d+$/.test(text) ? Number(text) : Date.parse(text);
    if (Number.isSafeInteger(at) && at >= 0) return at;
    ctx.addIssue({
      code: 'custom',
      message: 'an instant as epoch milliseconds or ISO 8601, such as 2026-01-31T10:00:00Z',
    });
    return z.NEVER;
  })
  .openapi({ type: 'string', description: 'Epoch milliseconds or ISO 8601' });
