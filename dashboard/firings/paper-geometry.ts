import type { PlanPoint } from '../../hub/contract/firing.ts';
import type { Gap } from '../../hub/contract/reading.ts';
import type { ChartSeries, TimeWindow } from '../charts/types.ts';

/** A chart as SVG paths: sharp on paper, independent of the screen's scheme and size. Pure. */

export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Scale {
  readonly x: (at: number) => number;
  readonly y: (value: number) => number;
  readonly low: number;
  readonly high: number;
}

type Value = (base: number) => number;

/** Maps a window of time and the values that fall into it onto a frame. `show` gives the unit people see. */
export function scaleOf(
  frame: Frame,
  window: TimeWindow,
  drawn: {
    readonly plan: readonly PlanPoint[];
    readonly series: readonly ChartSeries[];
    readonly show: Value;
  },
): Scale {
  const { low, high } = extent(drawn, window);
  const length = Math.max(1, window.to - window.from);
  return {
    x: (at) => frame.left + ((at - window.from) / length) * frame.width,
    y: (value) => frame.top + frame.height - ((value - low) / (high - low)) * frame.height,
    low,
    high,
  };
}

function extent(
  { plan, series, show }: { plan: readonly PlanPoint[]; series: readonly ChartSeries[]; show: Value },
  window: TimeWindow,
): { low: number; high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (at: number, ...values: number[]) => {
    if (at < window.from || at > window.to) return;
    for (const value of values) {
      low = Math.min(low, show(value));
      high = Math.max(high, show(value));
    }
  };
  for (const point of plan) take(point.at, point.low, point.high);
  for (const curve of series) for (const reading of good(curve)) take(reading.at, reading.value);
  if (low > high) return { low: 0, high: 1 };
  const room = (high - low || Math.abs(high) || 1) * 0.06;
  return { low: low - room, high: high + room };
}

/** The path of a measured curve, lifted wherever nothing was measured. */
export function curvePath(curve: ChartSeries, scale: Scale, show: Value): string {
  let path = '';
  let last: number | null = null;
  for (const reading of good(curve)) {
    const lift = last === null || isBroken(curve.gaps, last, reading.at);
    path += `${lift ? 'M' : 'L'}${short(scale.x(reading.at))} ${short(scale.y(show(reading.value)))}`;
    last = reading.at;
  }
  return path;
}

/** The path of the plan's middle line. */
export function planPath(plan: readonly PlanPoint[], scale: Scale, show: Value): string {
  return joined(plan.map((point) => [scale.x(point.at), scale.y(show(point.celsius))]));
}

/** The closed outline of the tolerance band. */
export function bandPath(plan: readonly PlanPoint[], scale: Scale, show: Value): string {
  if (plan.length === 0) return '';
  const upper = plan.map((point) => [scale.x(point.at), scale.y(show(point.high))] as const);
  const lower = plan.map((point) => [scale.x(point.at), scale.y(show(point.low))] as const);
  return `${joined([...upper, ...lower.reverse()])}Z`;
}

function joined(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('');
}

function good(curve: ChartSeries) {
  return curve.readings.filter((reading) => reading.quality === 'good');
}

function isBroken(gaps: readonly Gap[], from: number, to: number): boolean {
  return gaps.some((gap) => gap.from < to && gap.to > from);
}

function short(value: number): string {
  return String(Math.round(value * 10) / 10);
}
