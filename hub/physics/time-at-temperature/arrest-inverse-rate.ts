/**
 * Inverse-rate method (Osmond; Le Chatelier; Burgess 1908): how long the piece
 * spends in each few degrees. An arrest is a sharp peak over a quiet background,
 *
 *   time a K ┤        ▄
 *            │       ▐█▌
 *            │▁▁▁▁▁▁▁▟█▙▁▁▁▁▁▁▁   background = what the piece would take without it
 *            └──────────────────  °C
 *
 * and the area of the peak over the background is the heat of transformation:
 * J/g = sum of c dT (time / background - 1).
 *
 * Time in a bin, rather than the slope between two readings, does not mind steps
 * of a quarter degree, noise, or a piece that warms up again as it transforms.
 */
import { sensibleEnthalpy } from '../heat/material.ts';
import { type Direction, intervalWeights, type Leg } from './arrest-legs.ts';

/** Where a leg is searched, and how far around it the background is read, °C. */
export const SEARCH: Readonly<Record<Direction, { low: number; high: number }>> = {
  heating: { low: 700, high: 790 },
  cooling: { low: 550, high: 720 },
};
const SHOULDER_REACH = 60;
/** A background wants this many bins on either side of the peak. */
const LEAST_SHOULDER_BINS = 3;
const WIDEST_SHOULDER_CELSIUS = 45;
/** The ends of a leg, where it turns or soaks, tell nothing about rates. */
const END_CELSIUS = 6;
const PEAK_RATIO = 1.5;
const EDGE_RATIO = 1.25;
const LEAST_JOULES_PER_GRAM = 15;
const LEAST_SIGNIFICANCE = 4;

export interface Peak {
  /** Where the piece lingered longest, °C, and where the lingering began and ended. */
  readonly celsius: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly joulesPerGram: number;
  /** Height of the peak over the scatter of the background. */
  readonly significance: number;
}

interface Bin {
  readonly celsius: number;
  readonly width: number;
  /** Weighted time spent in the bin. */
  readonly dwell: number;
}

/** The arrest of a leg by inverse rate, or null when there is none worth the name. */
export function inverseRatePeak(leg: Leg): Peak | null {
  const bins = dwellBins(leg);
  const search = SEARCH[leg.direction];
  let best: Peak | null = null;
  for (const [i, bin] of bins.entries()) {
    if (bin.celsius < search.low || bin.celsius > search.high) continue;
    const peak = peakAt(bins, i);
    if (peak !== null && peak.joulesPerGram > (best?.joulesPerGram ?? 0)) best = peak;
  }
  return best;
}

function dwellBins(leg: Leg): Bin[] {
  const search = SEARCH[leg.direction];
  const celsius = leg.points.map((point) => point.celsius);
  const low = Math.max(search.low - SHOULDER_REACH, Math.min(...celsius) + END_CELSIUS);
  const high = Math.min(search.high + SHOULDER_REACH, Math.max(...celsius) - END_CELSIUS);
  const width = binWidth(leg);
  const count = Math.max(0, Math.floor((high - low) / width));
  const dwell = new Array<number>(count).fill(0);
  for (const [i, weight] of intervalWeights(leg).entries()) {
    spread(dwell, (celsius[i] ?? 0) - low, (celsius[i + 1] ?? 0) - low, width, weight);
  }
  return dwell.map((time, i) => ({ celsius: low + (i + 0.5) * width, width, dwell: time }));
}

/** Wide enough for a reading or two to fall into a bin, 3 to 10 K. */
function binWidth(leg: Leg): number {
  const steps = leg.points
    .slice(1)
    .map((point, i) => Math.abs(point.celsius - (leg.points[i]?.celsius ?? 0)));
  return Math.min(10, Math.max(3, 2 * median(steps)));
}

/** Shares the weight of an interval among the bins that the piece passed in it. */
function spread(dwell: number[], from: number, to: number, width: number, weight: number): void {
  const [a, b] = from < to ? [from, to] : [to, from];
  const first = Math.max(0, Math.floor(a / width));
  const last = Math.min(dwell.length - 1, Math.floor(b / width));
  for (let i = first; i <= last; i++) {
    const inside = Math.min(b, (i + 1) * width) - Math.max(a, i * width);
    const share = b > a ? inside / (b - a) : 1;
    dwell[i] = (dwell[i] ?? 0) + weight * Math.max(0, share);
  }
}

/** The peak around a bin: its background is read beside it, its edges follow from that. */
function peakAt(bins: readonly Bin[], centre: number): Peak | null {
  let [from, to] = [centre, centre];
  let background = backgroundAround(bins, from, to);
  // Two rounds: the first edges are found with a background that may still hold the flanks of the peak.
  for (let round = 0; round < 2 && background !== null; round++) {
    const ratio = ratioOf(bins, background);
    if (ratio(centre) < PEAK_RATIO) return null;
    while (ratio(from - 1) > EDGE_RATIO) from -= 1;
    while (ratio(to + 1) > EDGE_RATIO) to += 1;
    background = backgroundAround(bins, from, to);
  }
  if (background === null) return null;
  return measure(bins, from, to, background);
}

function measure(bins: readonly Bin[], from: number, to: number, background: Background): Peak | null {
  const ratio = ratioOf(bins, background);
  const inside = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const joules = inside.reduce((sum, i) => sum + excess(bins[i], ratio(i)), 0);
  const highest = inside.reduce((a, b) => (ratio(b) > ratio(a) ? b : a));
  const significance = Math.log(ratio(highest)) / background.scatter;
  if (joules / 1000 < LEAST_JOULES_PER_GRAM || significance < LEAST_SIGNIFICANCE) return null;
  const [low, top, high] = [bins[from], bins[highest], bins[to]];
  if (low === undefined || top === undefined || high === undefined) return null;
  return {
    celsius: top.celsius,
    lowCelsius: low.celsius - low.width / 2,
    highCelsius: high.celsius + high.width / 2,
    joulesPerGram: joules / 1000,
    significance,
  };
}

/** Heat of one bin beyond its background, J/kg, with the sensible heat under the EN peak as c. */
function excess(bin: Bin | undefined, ratio: number): number {
  if (bin === undefined) return 0;
  const half = bin.width / 2;
  const sensible = sensibleEnthalpy(bin.celsius + half) - sensibleEnthalpy(bin.celsius - half);
  return sensible * (ratio - 1);
}

interface Background {
  /** Straight in log time between a point left and a point right of the peak. */
  readonly logAt: (celsius: number) => number;
  /** Scatter of log time beside the peak, 0.04 at least. */
  readonly scatter: number;
}

function ratioOf(bins: readonly Bin[], background: Background): (index: number) => number {
  return (index) => {
    const bin = bins[index];
    return bin === undefined ? 0 : bin.dwell / Math.exp(background.logAt(bin.celsius));
  };
}

function backgroundAround(bins: readonly Bin[], from: number, to: number): Background | null {
  const width = bins[from]?.width ?? 1;
  const reach = Math.ceil(WIDEST_SHOULDER_CELSIUS / width);
  // One bin of distance keeps the foot of the peak out of its background.
  const left = bins.slice(Math.max(0, from - 1 - reach), Math.max(0, from - 1));
  const right = bins.slice(to + 2, to + 2 + reach);
  if (left.length < LEAST_SHOULDER_BINS || right.length < LEAST_SHOULDER_BINS) return null;
  if ([...left, ...right].some((bin) => bin.dwell <= 0)) return null;
  const [a, b] = [middleOf(left), middleOf(right)];
  const slope = (b.log - a.log) / (b.celsius - a.celsius);
  const logAt = (celsius: number): number => a.log + slope * (celsius - a.celsius);
  const off = [...left, ...right].map((bin) => Math.abs(Math.log(bin.dwell) - logAt(bin.celsius)));
  return { logAt, scatter: Math.max(0.04, 1.4826 * median(off)) };
}

function middleOf(bins: readonly Bin[]): { celsius: number; log: number } {
  const celsius = bins.reduce((sum, bin) => sum + bin.celsius, 0) / bins.length;
  return { celsius, log: median(bins.map((bin) => Math.log(bin.dwell))) };
}

/** Middle value; 0 of nothing. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? upper) + upper) / 2;
}
