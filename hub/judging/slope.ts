/** Least squares over a short window of samples, and the trend that it shows at the window's end. */

export interface Sample {
  /** Epoch ms. */
  readonly at: number;
  readonly value: number;
}

export interface Trend {
  /** Rate of change at the end of the window, units per second. */
  readonly perSecond: number;
  /** Change of that rate, units per second squared; 0 for a straight line. */
  readonly perSecondSquared: number;
  /** Standard error of `perSecond`, units per second. */
  readonly error: number;
  /** Fitted value at the end of the window. */
  readonly value: number;
}

interface Sums {
  readonly n: number;
  readonly s1: number;
  readonly s2: number;
  readonly s3: number;
  readonly s4: number;
  readonly y0: number;
  readonly y1: number;
  readonly y2: number;
}

/** Power sums with time in seconds measured back from the last sample, values from the last value. */
function sumsOf(samples: readonly Sample[], last: Sample): Sums {
  let [s1, s2, s3, s4, y0, y1, y2] = [0, 0, 0, 0, 0, 0, 0];
  for (const sample of samples) {
    const t = (sample.at - last.at) / 1000;
    const y = sample.value - last.value;
    s1 += t;
    s2 += t * t;
    s3 += t * t * t;
    s4 += t * t * t * t;
    y0 += y;
    y1 += t * y;
    y2 += t * t * y;
  }
  return { n: samples.length, s1, s2, s3, s4, y0, y1, y2 };
}

function residualSum(samples: readonly Sample[], last: Sample, at: (t: number) => number): number {
  let sum = 0;
  for (const sample of samples) {
    const miss = sample.value - last.value - at((sample.at - last.at) / 1000);
    sum += miss * miss;
  }
  return sum;
}

/**
 * Straight line by least squares, or null with fewer than 3 samples or no spread in time.
 * Source: ordinary least squares, NIST/SEMATECH e-Handbook 4.4.3.1.
 */
export function lineTrend(samples: readonly Sample[]): Trend | null {
  const last = samples.at(-1);
  if (last === undefined || samples.length < 3) return null;
  const { n, s1, s2, y0, y1 } = sumsOf(samples, last);
  const spread = n * s2 - s1 * s1;
  if (spread <= 0) return null;
  const slope = (n * y1 - s1 * y0) / spread;
  const offset = (y0 - slope * s1) / n;
  const rest = residualSum(samples, last, (t) => offset + slope * t);
  const error = Math.sqrt((Math.max(0, rest) / (n - 2)) * (n / spread));
  return { perSecond: slope, perSecondSquared: 0, error, value: last.value + offset };
}

/** Determinant of a symmetric-by-rows 3 by 3 matrix given as nine numbers. */
function det3(m: readonly [number, number, number, number, number, number, number, number, number]): number {
  const [a, b, c, d, e, f, g, h, i] = m;
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

/**
 * Parabola by least squares: value, rate and change of rate at the end of the window, or null with fewer than
 * 5 samples or no spread. Time is scaled by the window so that the normal equations stay well conditioned.
 */
export function curveTrend(samples: readonly Sample[]): Trend | null {
  const last = samples.at(-1);
  const first = samples[0];
  if (last === undefined || first === undefined || samples.length < 5) return null;
  const width = (last.at - first.at) / 1000;
  if (width <= 0) return null;
  const scaled = samples.map((s) => ({ at: (s.at - last.at) / width, value: s.value }));
  const end = { at: 0, value: last.value };
  const { n, s1, s2, s3, s4, y0, y1, y2 } = sumsOf(scaled, end);
  const whole = det3([n, s1, s2, s1, s2, s3, s2, s3, s4]);
  if (!(Math.abs(whole) > 1e-12)) return null;
  const offset = det3([y0, s1, s2, y1, s2, s3, y2, s3, s4]) / whole;
  const slope = det3([n, y0, s2, s1, y1, s3, s2, y2, s4]) / whole;
  const bend = det3([n, s1, y0, s1, s2, y1, s2, s3, y2]) / whole;
  const rest = residualSum(scaled, end, (t) => offset + slope * t + bend * t * t);
  const variance = Math.max(0, rest) / (n - 3);
  const error = Math.sqrt((variance * Math.max(0, n * s4 - s2 * s2)) / whole) / width;
  const perSecondSquared = (2 * bend) / (width * width);
  return { perSecond: slope / width, perSecondSquared, error, value: last.value + offset };
}

/**
 * How far a rising value that is slowing down will still rise within `seconds`. A rate that falls in proportion
 * to itself is a first-order approach: rise = rate / k * (1 - exp(-k t)) with k = -(change of rate) / rate.
 * A rate that is constant or growing is taken as constant.
 */
export function riseWithin(trend: Trend, seconds: number): number {
  if (trend.perSecond <= 0) return 0;
  const slowing = Math.max(0, -trend.perSecondSquared / trend.perSecond);
  if (slowing < 1e-9) return trend.perSecond * seconds;
  return (trend.perSecond / slowing) * (1 - Math.exp(-slowing * seconds));
}

/** Seconds until a rise of `distance`, on the same approach; null when it is never reached. */
export function secondsToRise(trend: Trend, distance: number): number | null {
  if (distance <= 0) return 0;
  if (trend.perSecond <= 0) return null;
  const slowing = Math.max(0, -trend.perSecondSquared / trend.perSecond);
  if (slowing < 1e-9) return distance / trend.perSecond;
  const share = (distance * slowing) / trend.perSecond;
  return share >= 1 ? null : -Math.log(1 - share) / slowing;
}

/**
 * Appends a sample when it is at least `spacingMs` after the last, and drops those older than `spanMs`.
 * At the instant of the last sample it takes its place: several channels may speak at once.
 */
export function slide(
  window: readonly Sample[],
  sample: Sample,
  spanMs: number,
  spacingMs: number,
): readonly Sample[] {
  const last = window.at(-1);
  if (last?.at === sample.at) return [...window.slice(0, -1), sample];
  if (last !== undefined && sample.at - last.at < spacingMs) return window;
  const from = window.findIndex((s) => s.at >= sample.at - spanMs);
  const kept = from < 0 ? [] : window.slice(from);
  kept.push(sample);
  return kept;
}
