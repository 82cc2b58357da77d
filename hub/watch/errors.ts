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
