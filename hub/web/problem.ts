import type { Context } from 'hono';
import { PROBLEM_CODES, type Problem, type ProblemCode } from '../contract/problem.ts';

const TITLES: Readonly<Record<ProblemCode, string>> = {
  'invalid-request': 'The request does not fit',
  'forbidden-origin': 'This page may not speak to the hub',
  'not-found': 'There is no such thing here',
  'method-not-allowed': 'This cannot be done to it',
  conflict: 'This does not fit what is there',
  'payload-too-large': 'Too much at once',
  'unsupported-media-type': 'Send JSON',
  'furnace-busy': 'This furnace is in a firing',
  'beyond-rating': 'Hotter than this furnace is rated for',
  'no-watched-channel': 'Nothing would be watching this firing',
  'not-running': 'This firing is over',
  'nothing-to-confirm': 'That segment is not the one running',
  'in-use': 'Something still needs it',
  'already-exists': 'There is one already',
  'danger-to-life': 'This alarm is about danger to life',
  'set-aside': 'This alarm is set aside',
  'already-acknowledged': 'Somebody has seen it already',
  'nothing-to-acknowledge': 'There is nothing to acknowledge',
  'nothing-to-silence': 'It does not sound',
  'nothing-to-reset': 'There is nothing to reset',
  'acknowledge-first': 'Acknowledge it first',
  'condition-still-holds': 'It is not over yet',
  'already-shelved': 'It is shelved already',
  'not-shelved': 'It is not shelved',
  'already-out-of-service': 'It is out of service already',
  'not-out-of-service': 'It is not out of service',
  'alarm-over': 'This alarm is back to normal',
  'shelf-out-of-bounds': 'A shelf is for a shift at most',
  'out-of-range': 'Outside the range that the source covers',
  'not-applicable': 'The model does not speak about this case',
  'bad-input': 'The numbers do not make sense together',
  'no-solution': 'There is no answer, or more than one',
  'too-much-work': 'Too much to compute at once',
  'archive-unavailable': 'The archive does not answer',
  'internal-error': 'The hub made a mistake',
};

/** RFC 9457 problem details, with the stable code both as a member and in the type URN. */
export function problem(
  code: ProblemCode,
  detail: string,
  instance: string,
  errors?: NonNullable<Problem['errors']>,
): Problem {
  return {
    type: `urn:soakwatch:problem:${code}`,
    title: TITLES[code],
    status: PROBLEM_CODES[code],
    detail,
    instance,
    code,
    ...(errors ? { errors } : {}),
  };
}

export function answerProblem(
  c: Context,
  code: ProblemCode,
  detail: string,
  errors?: NonNullable<Problem['errors']>,
): Response {
  const body = problem(code, detail, new URL(c.req.url).pathname, errors);
  return new Response(JSON.stringify(body), {
    status: body.status,
    headers: { 'content-type': 'application/problem+json', 'cache-control': 'no-store' },
  });
}

interface ZodLike {
  readonly issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[];
}

/** A refused request body or query, every fault at once, each with its place. */
export function answerInvalid(c: Context, error: ZodLike): Response {
  const errors = error.issues.map((issue) => ({ path: pointer(issue.path), message: issue.message }));
  const [first] = errors;
  const detail = first ? `${first.path || '/'}: ${first.message}` : 'the request does not fit its schema';
  return answerProblem(c, 'invalid-request', detail, errors);
}

/** An RFC 6901 pointer to the field at fault. */
function pointer(path: readonly PropertyKey[]): string {
  return path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}
