import { z } from 'zod';

/** RFC 9457 problem details with a stable code. */
export const PROBLEM_CODES = {
  'invalid-request': 400,
  'forbidden-origin': 403,
  'not-found': 404,
  'method-not-allowed': 405,
  conflict: 409,
  'payload-too-large': 413,
  'unsupported-media-type': 415,
  'furnace-busy': 409,
  'beyond-rating': 422,
  'no-watched-channel': 422,
  'not-running': 409,
  'nothing-to-confirm': 409,
  'in-use': 409,
  'already-exists': 409,
  // The refusals of an alarm's life cycle.
  'danger-to-life': 403,
  'set-aside': 409,
  'already-acknowledged': 409,
  'nothing-to-acknowledge': 409,
  'nothing-to-silence': 409,
  'nothing-to-reset': 409,
  'acknowledge-first': 409,
  'condition-still-holds': 409,
  'already-shelved': 409,
  'not-shelved': 409,
  'already-out-of-service': 409,
  'not-out-of-service': 409,
  'alarm-over': 409,
  'shelf-out-of-bounds': 422,
  // The refusals of hub/physics: the question is well formed, the science has no answer to it.
  'out-of-range': 422,
  'not-applicable': 422,
  'bad-input': 422,
  'no-solution': 422,
  'too-much-work': 422,
  'archive-unavailable': 503,
  'internal-error': 500,
} as const;
export type ProblemCode = keyof typeof PROBLEM_CODES;

export const Problem = z
  .object({
    type: z.string().describe('A URN that names the kind of problem'),
    title: z.string(),
    status: z.int(),
    detail: z.string().optional(),
    instance: z.string().optional(),
    code: z.string().describe('Stable code, for programs'),
    errors: z.array(z.object({ path: z.string(), message: z.string() })).optional(),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof Problem>;
