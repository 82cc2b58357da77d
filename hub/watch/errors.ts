import type { ProblemCode } from '../contract/problem.ts';

/** A request that the shop's state does not allow. The code is stable; the message says what to do. */
export class WatchError extends Error {
  readonly code: ProblemCode;
  constructor(code: ProblemCode, message: string) {
    super(message);
    this.name = 'WatchError';
    this.code = code;
  }
}

/** A refusal that belongs to one field of what was sent; `path` is an RFC 6901 pointer into it. */
export class FieldError extends WatchError {
  readonly path: string;
  constructor(path: string, message: string) {
    super('invalid-request', message);
    this.name = 'FieldError';
    this.path = path;
  }
}
