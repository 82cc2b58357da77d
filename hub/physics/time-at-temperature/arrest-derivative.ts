/**
 * Derivative method: the rate of the piece in time, against the rate that a
 * neutral body would have at the same temperature. An arrest is a stretch in
 * which the rate falls under 60 % of it, or turns round, and then recovers.
 *
 * It sees the record along time where the inverse rate sees it along
 * temperature, so it serves as a second witness; alone it is fooled too easily.
 */
import { median, SEARCH } from './arrest-inverse-rate.ts';
import { intervalWeights, type Leg } from './arrest-legs.ts';

/** A stretch of slowed or reversed rate. */
export interface Stall {
  readonly fromMs: number;
  readonly toMs: number;
  /** Mean temperature of the stretch, °C. */
  readonly celsius: number;
}

const STALLED = 0.6;
/** The rate is read over about this much change of temperature, K. */
const RATE_SPAN_CELSIUS = 8;
const SHOULDER_REACH = 60;
const BIN_CELSIUS = 10;
const LEAST_POINTS = 3;
/** Every further point costs a window of its own and tells nothing new. */
const MOST_POINTS = 3000;

interface Rated {
  readonly atMs: number;
  readonly celsius: number;
  /** K a weighted second, more than 0 in the direction of the leg. */
  readonly rate: number;
}

/** Stalls of a leg inside its search window, longest first. */
export function stallsOf(leg: Leg): Stall[] {
  const rated = rates(leg);
  const neutral = neutralRate(rated);
  if (neutral === null) return [];
  const search = SEARCH[leg.direction];
  const stalls: Rated[][] = [];
  let open: Rated[] = [];
  for (const point of rated) {
    const slow = point.rate < STALLED * neutral(point.celsius);
    if (slow) open.push(point);
    // Only a stall that the piece comes out of counts: a soak never does.
    else if (open.length > 0) {
      stalls.push(open);
      open = [];
    }
  }
  return stalls
    .filter((points) => points.length >= LEAST_POINTS)
    .map(stallFrom)
    .filter((stall) => stall.celsius >= search.low && stall.celsius <= search.high)
    .toSorted((a, b) => b.toMs - b.fromMs - (a.toMs - a.fromMs));
}

function stallFrom(points: readonly Rated[]): Stall {
  const celsius = points.reduce((sum, point) => sum + point.celsius, 0) / points.length;
  return { fromMs: points[0]?.atMs ?? 0, toMs: points.at(-1)?.atMs ?? 0, celsius };
}

/** Rates by straight-line fits over windows long enough to see past noise and digitiser steps. */
function rates(leg: Leg): Rated[] {
  const search = SEARCH[leg.direction];
  const clock = [0];
  for (const weight of intervalWeights(leg)) clock.push((clock.at(-1) ?? 0) + weight);
  const all = leg.points
    .map((point, i) => ({ atMs: point.atMs, celsius: point.celsius, clock: clock[i] ?? 0 }))
    .filter((p) => p.celsius > search.low - SHOULDER_REACH && p.celsius < search.high + SHOULDER_REACH);
  const stride = Math.ceil(all.length / MOST_POINTS);
  const near = all.filter((_, i) => i % stride === 0);
  const first = near[0];
  const last = near.at(-1);
  if (first === undefined || last === undefined || near.length < 8) return [];
  const typical = Math.abs(last.celsius - first.celsius) / Math.max(1e-9, last.clock - first.clock);
  const half = RATE_SPAN_CELSIUS / 2 / Math.max(1e-9, typical);
  const sign = leg.direction === 'heating' ? 1 : -1;
  let from = 0;
  let to = 0;
  return near.map((point, i) => {
    while ((near[from]?.clock ?? 0) < point.clock - half) from += 1;
    while (to < near.length - 1 && (near[to + 1]?.clock ?? 0) <= point.clock + half) to += 1;
    const window = near.slice(Math.max(0, Math.min(from, i - 1)), Math.max(to, i + 1) + 1);
    return { atMs: point.atMs, celsius: point.celsius, rate: sign * slope(window) };
  });
}

function slope(points: readonly { readonly clock: number; readonly celsius: number }[]): number {
  const n = points.length;
  const meanX = points.reduce((sum, p) => sum + p.clock, 0) / n;
  const meanY = points.reduce((sum, p) => sum + p.celsius, 0) / n;
  const xy = points.reduce((sum, p) => sum + (p.clock - meanX) * (p.celsius - meanY), 0);
  const xx = points.reduce((sum, p) => sum + (p.clock - meanX) ** 2, 0);
  return xx > 0 ? xy / xx : 0;
}

/** Rate of a neutral body over temperature: straight through the middle of the lower and of the upper third. */
function neutralRate(rated: readonly Rated[]): ((celsius: number) => number) | null {
  const bins = new Map<number, number[]>();
  for (const { celsius, rate } of rated) {
    const key = Math.floor(celsius / BIN_CELSIUS);
    bins.set(key, [...(bins.get(key) ?? []), rate]);
  }
  const row = [...bins.entries()]
    .toSorted((a, b) => a[0] - b[0])
    .map(([key, all]) => ({ celsius: (key + 0.5) * BIN_CELSIUS, rate: median(all) }));
  if (row.length < 6) return null;
  const third = Math.floor(row.length / 3);
  const [low, high] = [row.slice(0, third), row.slice(-third)].map((part) => ({
    celsius: median(part.map((bin) => bin.celsius)),
    rate: median(part.map((bin) => bin.rate)),
  }));
  if (low === undefined || high === undefined) return null;
  const rise = (high.rate - low.rate) / (high.celsius - low.celsius);
  const least = 0.2 * Math.max(low.rate, high.rate);
  return (celsius) => Math.max(least, low.rate + rise * (celsius - low.celsius));
}
