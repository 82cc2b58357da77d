/**
 * Refusals of the simulated shop.
 *
 * - `bad-flag`: a command-line flag is unknown, malformed or out of range
 * - `bad-behaviour`: a behaviour is unknown or one of its parameters is wrong
 * - `bad-plan`: a furnace plan cannot be run
 * - `bad-option`: a program called the simulator with an impossible option
 */
export type SimErrorCode = 'bad-flag' | 'bad-behaviour' | 'bad-plan' | 'bad-option';

/** A refusal with a stable code; the message says what was wrong, where, and what would do. */
export class SimError extends Error {
  readonly code: SimErrorCode;

  constructor(code: SimErrorCode, message: string) {
    super(message);
    this.name = 'SimError';
    this.code = code;
  }
}
