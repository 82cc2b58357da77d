/**
 * Refusals of the judges.
 * - `time-runs-back`: an input is older than the state it is given to. Roll back to an earlier state instead.
 */
export type JudgeErrorCode = 'time-runs-back';

/** A refusal with a stable code and a sentence for people. */
export class JudgeError extends Error {
  readonly code: JudgeErrorCode;

  constructor(code: JudgeErrorCode, message: string) {
    super(message);
    this.name = 'JudgeError';
    this.code = code;
  }
}

/**
 * Refuses an input from before `stateAt` (both epoch ms).
 * @throws JudgeError `time-runs-back`
 */
export function requireForward(stateAt: number, inputAt: number, what: string): void {
  if (inputAt >= stateAt) return;
  throw new JudgeError(
    'time-runs-back',
    `the ${what} judge stands at ${stateAt} and was given an input of ${inputAt} (epoch ms): start again from a state that is not later than the input`,
  );
}
