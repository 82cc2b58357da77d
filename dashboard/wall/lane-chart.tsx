import { useEffect, useMemo, useState } from 'preact/hooks';
import type { LiveFiring } from '../../hub/contract/live.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { FiringChart } from '../charts/firing-chart.tsx';
import type { ChartMark, ChartSeries, ForetoldPoint, TimeWindow } from '../charts/types.ts';
import { gapsUntil } from '../feed/series.ts';
import { useShell } from '../shell.ts';
import { wallWords } from '../words/wall.ts';
import { shapeOf } from './alarm-order.ts';
import { type Followed, followSeries } from './follow-series.ts';
import type { Lane } from './lane.ts';

/** Now-line, open gaps and window move at this pace; readings come when they come. */
const PACE_MS = 2_000;
/** The shortest time a lane's chart shows. */
const LEAST_MS = 10 * 60_000;

interface LaneChartProps {
  readonly lane: Lane;
  readonly live: LiveFiring;
}

/** The firing so far and its plan to the end. */
export function LaneChart({ lane, live }: LaneChartProps) {
  const { feed } = useShell();
  const followed = useFollowed(lane.channels, live.firing.startedAt);
  const now = Math.floor(feed.now.value / PACE_MS) * PACE_MS;
  const { plan } = live.judgement;
  const drawn = followed.map(({ channel, follow }) => ({ channel, series: follow.series.value }));
  const series = useMemo(
    () => drawn.flatMap(({ channel, series: known }) => (known ? [curveOf(channel, known, live, now)] : [])),
    [now, ...drawn.map(({ series: known }) => known)],
  );
  const marks = useMemo(
    () => marksOf(feed.state.value?.alarms.values() ?? [], live),
    [feed.state.value?.alarms, live.firing.id, live.arrests.length],
  );
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  return (
    <div class="lane-chart">
      <FiringChart
        name={wallWords.chartName(lane.furnace.name)}
        unit={unit}
        plan={plan}
        series={[...series, forecastCurve(live)]}
        foretold={live.judgement.forecast?.points ?? NOTHING_FORETOLD}
        marks={marks}
        whole={wholeOf(live, now)}
        now={now}
      />
    </div>
  );
}

function curveOf(
  channel: Channel,
  known: Parameters<typeof gapsUntil>[0],
  live: LiveFiring,
  now: number,
): ChartSeries {
  const isWatched = live.firing.watchedChannels.includes(channel.id);
  return {
    label: channel.label || channel.name,
    role: isWatched ? 'measured' : 'other',
    readings: known.readings,
    gaps: gapsUntil(known, now, channel.staleAfterSeconds * 1000),
  };
}

const NOTHING_FORETOLD: readonly ForetoldPoint[] = [];

/** Always there, and empty while nothing is foretold: a curve that comes and goes would make a new chart each time. */
function forecastCurve({ judgement }: LiveFiring): ChartSeries {
  const points = judgement.forecast?.points ?? NOTHING_FORETOLD;
  const readings = points.map(({ at, celsius }) => ({ at, value: celsius, quality: 'good' as const }));
  return { label: wallWords.forecast, role: 'forecast', readings, gaps: [] };
}

function wholeOf({ firing, judgement }: LiveFiring, now: number): TimeWindow {
  const from = firing.startedAt;
  const end = Math.max(judgement.plan.at(-1)?.at ?? 0, judgement.firingEndsAt ?? 0, now);
  const length = Math.max(LEAST_MS, end - from);
  return { from, to: from + Math.ceil(length * 1.03) };
}

type AlarmList = Iterable<
  Parameters<typeof shapeOf>[0] & { firingId: string | null; raisedAt: number; title: string }
>;

function marksOf(alarms: AlarmList, { firing, arrests }: LiveFiring): ChartMark[] {
  const raised = [...alarms]
    .filter((alarm) => alarm.firingId === firing.id)
    .map((alarm) => ({ at: alarm.raisedAt, shape: shapeOf(alarm), words: alarm.title }));
  // "Arrest on heating at 722 °C": what it means stands in the record.
  const turned = arrests.map(({ at, text }) => ({
    at,
    shape: 'event' as const,
    words: text.split(': ', 1)[0] ?? text,
  }));
  return [...raised, ...turned];
}

interface FollowedChannel {
  readonly channel: Channel;
  readonly follow: Followed;
}

/** Follows these channels for as long as the chart is there; a change of channels begins anew. */
function useFollowed(channels: readonly Channel[], fromMs: number): readonly FollowedChannel[] {
  const shell = useShell();
  const [followed, setFollowed] = useState<readonly FollowedChannel[]>([]);
  const key = channels.map((channel) => `${channel.id}:${channel.staleAfterSeconds}`).join();
  useEffect(() => {
    const started = channels.map((channel) => ({ channel, follow: followSeries(shell, channel, fromMs) }));
    setFollowed(started);
    return () => {
      for (const { follow } of started) follow.stop();
    };
  }, [key, fromMs]);
  return followed;
}
