/**
 * A condition with a deadband and with delays, in event time: no clock is read, the instants come with the
 * signal. This is what keeps noise from chattering.
 */

export interface ConditionState {
  /** True after the on-delay and until the off-delay has run out. */
  readonly raised: boolean;
  /** The signal as last told. */
  readonly signal: boolean;
  /** Since when the signal has been what it is, epoch ms; null before the first word and while unknown. */
  readonly signalSince: number | null;
  /** When the signal came on that led to `raised`, epoch ms; null while not raised. */
  readonly since: number | null;
}

export interface Delays {
  readonly onDelayMs: number;
  readonly offDelayMs: number;
}

export interface Signal {
  /** Null: nobody can tell now (blind). What is raised stays raised; a delay that was running starts anew. */
  readonly active: boolean | null;
  /** Epoch ms, never earlier than the one before. */
  readonly at: number;
}

export const QUIET: ConditionState = { raised: false, signal: false, signalSince: null, since: null };

/** The next state of a condition. Returns the same object when nothing changed. */
export function stepCondition(state: ConditionState, signal: Signal, delays: Delays): ConditionState {
  if (signal.active === null) {
    return state.signalSince === null ? state : { ...state, signalSince: null };
  }
  const same = state.signal === signal.active && state.signalSince !== null;
  const signalSince = same && state.signalSince !== null ? state.signalSince : signal.at;
  const held = signal.at - signalSince;
  if (signal.active && !state.raised && held >= delays.onDelayMs) {
    return { raised: true, signal: true, signalSince, since: signalSince };
  }
  if (!signal.active && state.raised && held >= delays.offDelayMs) {
    return { raised: false, signal: false, signalSince, since: null };
  }
  if (same) return state;
  return { ...state, signal: signal.active, signalSince };
}

/**
 * True above `limit`; once `was`, true until the value is at or below `limit - deadband`. Give whether the
 * condition is raised: the deadband holds an alarm, it does not help to raise one.
 */
export function aboveLimit(was: boolean, value: number, limit: number, deadband: number): boolean {
  return was ? value > limit - deadband : value > limit;
}

/** True below `limit`; once `was`, true until the value is at or above `limit + deadband`. */
export function belowLimit(was: boolean, value: number, limit: number, deadband: number): boolean {
  return was ? value < limit + deadband : value < limit;
}
