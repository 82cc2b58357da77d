import type { z } from 'zod';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';

export interface Computed<T> {
  /** The newest answer; null until there is one. */
  readonly value: T | null;
  /** For `ProblemNote`; null when the last question was answered. */
  readonly error: unknown;
  readonly isWaiting: boolean;
}

/** Asks a computation of the hub, again for every question that differs. */
export function useComputation<T>(name: string, question: object, schema: z.ZodType<T>): Computed<T> {
  const { api } = useShell();
  const { answer } = useAnswer(`${name} ${JSON.stringify(question)}`, () =>
    api.compute.ask(name, question, schema),
  );
  return {
    value: answer.state === 'here' ? answer.value : null,
    error: answer.state === 'failed' ? answer.error : null,
    isWaiting: answer.state === 'waiting',
  };
}
