import type { TimeWindow } from './types.ts';

/** Zoom and pan over time, as arithmetic. A window never leaves the whole and never gets below a minute. */

const LEAST_MS = 60_000;

/** Scales a window by `factor` (below 1: closer) so that the instant `around` stays where it is. */
export function zoomed(window: TimeWindow, factor: number, around: number, whole: TimeWindow): TimeWindow {
  const length = window.to - window.from;
  const wanted = Math.min(whole.to - whole.from, Math.max(LEAST_MS, length * factor));
  const share = length > 0 ? (around - window.from) / length : 0.5;
  return kept({ from: around - share * wanted, to: around + (1 - share) * wanted }, whole);
}

/** Moves a window by a share of its length: negative is earlier. */
export function panned(window: TimeWindow, share: number, whole: TimeWindow): TimeWindow {
  const by = (window.to - window.from) * share;
  return kept({ from: window.from + by, to: window.to + by }, whole);
}

/** The window, moved and if need be shortened so that it lies inside the whole. Whole milliseconds. */
export function kept(window: TimeWindow, whole: TimeWindow): TimeWindow {
  const length = Math.min(window.to - window.from, whole.to - whole.from);
  const from = Math.min(Math.max(window.from, whole.from), whole.to - length);
  return { from: Math.round(from), to: Math.round(from + length) };
}

/** A window between two instants in either order, at least a minute long. */
export function between(one: number, other: number, whole: TimeWindow): TimeWindow {
  const from = Math.min(one, other);
  return kept({ from, to: Math.max(from + LEAST_MS, one, other) }, whole);
}
