/**
 * Refusals of the computations in hub/physics.
 *
 * A formula used outside its validity gives a number that looks as good as any
 * other, so the computations refuse instead of answering. The code is stable
 * and may be relied on by routes and screens; the message is for people.
 */

/**
 * Why a computation refused.
 * - `out-of-range`: an input lies outside the range the source covers
 * - `not-applicable`: the model does not speak about this case at all
 * - `bad-input`: the input is malformed or contradicts itself
 * - `no-solution`: the equation has no (unique) answer for these inputs
 */
export type PhysicsErrorCode = 'out-of-range' | 'not-applicable' | 'bad-input' | 'no-solution';

/** A refusal with a stable code, a sentence for people and the facts behind it. */
export class PhysicsError extends Error {
  readonly code: PhysicsErrorCode;
  readonly details: Readonly<Record<string, unknown>>;

  constructor(code: PhysicsErrorCode, message: string, details: Record<string, unknown> = {}) {
    super(message);
    this.name = 'PhysicsError';
    this.code = code;
    this.details = details;
  }
}

/**
 * Returns `value` when it lies in [low, high], both ends included.
 *
 * @param name what the value is, as it should read in the message
 * @param unit unit of all three numbers, e.g. '°C', 'mV'
 * @throws PhysicsError `out-of-range` naming the quantity, the value and the
 *   range. NaN is refused too: no comparison with it holds.
 */
export function requireRange(name: string, value: number, low: number, high: number, unit: string): number {
  if (value >= low && value <= high) return value;
  const message = `${name} is ${value} ${unit}, outside the valid range ${low} to ${high} ${unit}`;
  throw new PhysicsError('out-of-range', message, { name, value, low, high, unit });
}
