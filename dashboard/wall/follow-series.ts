import { effect, type ReadonlySignal, signal } from '@preact/signals';
import type { ReadingSeries } from '../../hub/contract/reading.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { withReading } from '../feed/series.ts';
import type { Shell } from '../shell.ts';

/** About two points a column of a lane's chart. */
const POINTS = 1500;
/** The live feed leaves out what a newer value superseded; a fresh answer now and then fills that in. */
const RELOAD_MS = 60_000;
const RETRY_MS = 5_000;

export type FollowedChannel = Pick<Channel, 'id' | 'staleAfterSeconds'>;

export interface Followed {
  /** Null until the first answer. */
  readonly series: ReadonlySignal<ReadingSeries | null>;
  readonly stop: () => void;
}

/** Follows one channel from an instant on: the archive's readings first, then each as it comes. */
export function followSeries({ api, feed }: Shell, channel: FollowedChannel, fromMs: number): Followed {
  const series = signal<ReadingSeries | null>(null);
  const staleAfterMs = channel.staleAfterSeconds * 1000;
  let timer: number | undefined;
  let stopped = false;

  const load = async () => {
    window.clearTimeout(timer);
    const span = { from: fromMs, to: Math.max(fromMs, Math.round(feed.now.peek())), points: POINTS };
    const wait = await api.readings(channel.id, span).then(
      (answer) => {
        const newer = (series.peek()?.readings ?? []).filter((reading) => reading.at > span.to);
        series.value = newer.reduce((grown, reading) => withReading(grown, reading, staleAfterMs), answer);
        return RELOAD_MS;
      },
      () => RETRY_MS,
    );
    if (!stopped) timer = window.setTimeout(() => void load(), wait);
  };
  const stopListening = feed.onReading((id, reading) => {
    const known = series.peek();
    if (id === channel.id && known !== null) series.value = withReading(known, reading, staleAfterMs);
  });
  // Loads at the start, and again when the hub comes back: what it kept meanwhile belongs into the curve.
  const stopLoading = effect(() => {
    if (!feed.blind.value) void load();
  });
  return {
    series,
    stop: () => {
      stopped = true;
      window.clearTimeout(timer);
      stopListening();
      stopLoading();
    },
  };
}
