import type { Problem } from '../../hub/contract/problem.ts';

/**
 * Why a request brought nothing.
 * - `refused`: the hub answered with a problem (RFC 9457); `code` is the hub's own
 * - `hub-unreachable`: no answer at all
 * - `answer-not-understood`: an answer that does not fit the contract
 */
export type ApiErrorKind = 'refused' | 'hub-unreachable' | 'answer-not-understood';

export class ApiError extends Error {
  readonly kind: ApiErrorKind;
  /** Stable code: the problem's code when refused, else the kind. */
  readonly code: string;
  /** HTTP status; 0 when there was no answer. */
  readonly status: number;
  readonly problem: Problem | null;

  constructor(kind: ApiErrorKind, message: string, facts: { status: number; problem?: Problem }) {
    super(message);
    this.name = 'ApiError';
    this.kind = kind;
    this.status = facts.status;
    this.problem = facts.problem ?? null;
    this.code = facts.problem?.code ?? kind;
  }

  /** What the hub finds wrong with one field, by its path as the hub writes it; undefined when nothing. */
  fieldError(path: string): string | undefined {
    return this.problem?.errors?.find((entry) => entry.path === path)?.message;
  }
}
