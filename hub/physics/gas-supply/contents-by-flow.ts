/**
 * What is left by adding up the flow from a noted fill, for shops without a scale.
 *
 * A flow by gauge and jet is off by 15 % or more, always the same way in one
 * shop, so the band grows with what was drawn and never shrinks again until the
 * cylinder is weighed or changed. Time in which nobody knows the flow counts as
 * the last flow, and in the band as anything from none to the most.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import type { MassBand } from './cylinder.ts';

export interface ContentsConfig {
  /** Error of the flow as a share of it, 0 to 1: 0.15 for a jet without a scale. */
  readonly flowErrorShare: number;
  /** The most that can flow, kg/h, above 0. */
  readonly mostKilogramsPerHour: number;
  /** How long a flow is believed, ms, above 0. */
  readonly longestHoldMs: number;
}

export interface ContentsState {
  readonly atMs: number;
  readonly fill: MassBand;
  readonly drawn: MassBand;
  /** The last flow and when; null before the first. */
  readonly last: { readonly atMs: number; readonly kilogramsPerHour: number } | null;
  /** Time in which nobody knew the flow, s. */
  readonly unknownSeconds: number;
}

const NOTHING: MassBand = { low: 0, value: 0, high: 0 };
const HOUR_MS = 3_600_000;

/** A cylinder was put on with so much in it. */
export function noteFill(atMs: number, fill: MassBand): ContentsState {
  const ordered = fill.low >= 0 && fill.low <= fill.value && fill.value <= fill.high;
  if (!ordered) throw new PhysicsError('bad-input', 'a fill is 0 <= low <= value <= high', { ...fill });
  return { atMs, fill, drawn: NOTHING, last: null, unknownSeconds: 0 };
}

/** A flow, or (null) the news that time has passed without one. */
export interface FlowNews {
  readonly atMs: number;
  readonly kilogramsPerHour: number | null;
}

/**
 * The next state. Pure; ticks between readings change nothing.
 *
 * @throws PhysicsError `bad-input` when time runs back, `out-of-range` for a flow below 0 or above 1000 kg/h
 */
export function stepContents(config: ContentsConfig, state: ContentsState, news: FlowNews): ContentsState {
  if (!(news.atMs >= state.atMs)) {
    throw new PhysicsError('bad-input', `time runs back from ${state.atMs} to ${news.atMs}`, { ...news });
  }
  const flow = news.kilogramsPerHour;
  if (flow !== null) requireRange('Flow', flow, 0, 1000, 'kg/h');
  const { last } = state;
  const heldUntil = last === null ? state.atMs : last.atMs + config.longestHoldMs;
  const believedMs = Math.min(news.atMs, Math.max(state.atMs, heldUntil));
  const known = drawnIn(believedMs - state.atMs, last?.kilogramsPerHour ?? 0, config);
  const unknownMs = news.atMs - believedMs;
  const guessed = {
    low: 0,
    value: ((last?.kilogramsPerHour ?? 0) * unknownMs) / HOUR_MS,
    high: (Math.max(config.mostKilogramsPerHour, last?.kilogramsPerHour ?? 0) * unknownMs) / HOUR_MS,
  };
  return {
    ...state,
    atMs: news.atMs,
    drawn: sum(sum(state.drawn, known), guessed),
    last: flow === null ? last : { atMs: news.atMs, kilogramsPerHour: flow },
    unknownSeconds: state.unknownSeconds + unknownMs / 1000,
  };
}

function drawnIn(ms: number, kilogramsPerHour: number, { flowErrorShare }: ContentsConfig): MassBand {
  const value = (kilogramsPerHour * ms) / HOUR_MS;
  return { low: value * (1 - flowErrorShare), value, high: value * (1 + flowErrorShare) };
}

function sum(a: MassBand, b: MassBand): MassBand {
  return { low: a.low + b.low, value: a.value + b.value, high: a.high + b.high };
}

/** What is left, kg, never below nothing. */
export function contentsByFlow({ fill, drawn }: ContentsState): MassBand {
  return {
    low: Math.max(0, fill.low - drawn.high),
    value: Math.max(0, fill.value - drawn.value),
    high: Math.max(0, fill.high - drawn.low),
  };
}
