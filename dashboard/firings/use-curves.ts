import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { ReadingSeries } from '../../hub/contract/reading.ts';
import { type Shell, useShell } from '../shell.ts';
import { type Followed, followSeries } from '../wall/follow-series.ts';
import type { CurveChannel } from './channels.ts';

/** The most that the hub gives for one curve: about four a pixel, so that zooming in still shows detail. */
const POINTS = 4000;
const RETRY_MS = 5000;

export interface Curve {
  readonly channel: CurveChannel;
  /** Null while its readings are on their way. */
  readonly series: ReadingSeries | null;
}

/** The readings of these channels in the time of a firing; they grow while it runs. */
export function useCurves(firing: FiringDetail, channels: readonly CurveChannel[]): readonly Curve[] {
  const shell = useShell();
  const [followed, setFollowed] = useState<readonly { channel: CurveChannel; follow: Followed }[]>([]);
  // A channel that the feed names only later is then followed live, and an old age that was changed counts.
  const known = shell.feed.state.value?.channels;
  const wanted = channels.map(({ id }) => `${id}:${known?.get(id)?.staleAfterSeconds}`).join();
  const key = `${firing.id} ${firing.startedAt} ${firing.endedAt} ${wanted}`;
  // the key names all that decides which readings
  useEffect(() => {
    const started = channels.map((channel) => ({ channel, follow: curveOf(shell, firing, channel) }));
    setFollowed(started);
    return () => {
      for (const { follow } of started) follow.stop();
    };
  }, [key]);
  return followed.map(({ channel, follow }) => ({
    channel: channels.find(({ id }) => id === channel.id) ?? channel,
    series: follow.series.value,
  }));
}

function curveOf(shell: Shell, firing: FiringDetail, channel: CurveChannel): Followed {
  const known = shell.feed.state.peek()?.channels.get(channel.id);
  if (firing.endedAt === null && known) return followSeries(shell, known, firing.startedAt);
  const to = firing.endedAt ?? Math.round(shell.feed.now.peek());
  return readSeries(shell, channel.id, { from: firing.startedAt, to, points: POINTS });
}

/** Readings of a time that is over: asked for once, and again only when the hub did not answer. */
function readSeries(
  { api }: Shell,
  channelId: string,
  span: { from: number; to: number; points: number },
): Followed {
  const series = signal<ReadingSeries | null>(null);
  let timer: number | undefined;
  let stopped = false;
  const load = () => {
    api.readings(channelId, span).then(
      (answer) => {
        series.value = answer;
      },
      () => {
        if (!stopped) timer = window.setTimeout(load, RETRY_MS);
      },
    );
  };
  load();
  return {
    series,
    stop: () => {
      stopped = true;
      window.clearTimeout(timer);
    },
  };
}
