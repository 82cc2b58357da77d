import { useEffect, useState } from 'preact/hooks';
import type { Channel } from '../../hub/contract/shop.ts';
import { useShell } from '../shell.ts';
import { type Followed, followSeries } from '../wall/follow-series.ts';
import type { CurveChannel } from './curve.ts';

/** The readings of these channels since an instant, growing as they come. */
export function useAirCurves(channels: readonly Channel[], fromMs: number): readonly CurveChannel[] {
  const shell = useShell();
  const [followed, setFollowed] = useState<ReadonlyMap<string, Followed>>(new Map());
  const key = `${fromMs} ${channels.map(({ id, staleAfterSeconds }) => `${id}:${staleAfterSeconds}`).join()}`;
  useEffect(() => {
    const started = new Map(channels.map((channel) => [channel.id, followSeries(shell, channel, fromMs)]));
    setFollowed(started);
    return () => {
      for (const { stop } of started.values()) stop();
    };
  }, [key]);
  return channels.map(({ id, label, name, staleAfterSeconds }) => ({
    id,
    label: label || name,
    staleAfterSeconds,
    series: followed.get(id)?.series.value ?? null,
  }));
}
