import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { ReadingSeries } from '../../hub/contract/reading.ts';
import type { ChartSeries, TimeWindow } from '../charts/types.ts';
import { gapsUntil } from '../feed/series.ts';
import type { CurveChannel } from './channels.ts';

/** What the chart of a firing shows, for the screen and for paper. */

const LEAST_MS = 60_000;

/** The whole time of a firing: what was planned and what it took, with a little room at the end. */
export function firingWindow(firing: FiringDetail, nowMs: number): TimeWindow {
  const planned = firing.judgement.plan.at(-1)?.at ?? firing.startedAt;
  const isOver = firing.endedAt !== null;
  const end = isOver
    ? (firing.endedAt ?? nowMs)
    : Math.max(planned, firing.judgement.firingEndsAt ?? 0, nowMs);
  const length = Math.max(LEAST_MS, end - firing.startedAt);
  return { from: firing.startedAt, to: firing.startedAt + Math.ceil(length * (isOver ? 1.01 : 1.03)) };
}

/** A channel's readings as a curve. While the firing runs, silence up to `nowMs` is an open gap. */
export function curveSeries(channel: CurveChannel, series: ReadingSeries, nowMs: number | null): ChartSeries {
  return {
    label: channel.label,
    role: channel.watched ? 'measured' : 'other',
    readings: series.readings,
    gaps: nowMs === null ? series.gaps : gapsUntil(series, nowMs, channel.staleAfterSeconds * 1000),
  };
}
