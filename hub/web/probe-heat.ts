import type { Archive } from '../archive/types.ts';
import type { Probe, TimeAboveLimit } from '../contract/probe.ts';
import type { Channel } from '../contract/shop.ts';
import { PhysicsError } from '../physics/errors.ts';
import { recommendedUpperLimit } from '../physics/probe-limits.ts';
import { type HotSpan, hotSpan } from './hot-span.ts';

/** Hours above the recommended limit of a probe: over one firing, or over all that a channel ever sent. */

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
/** Readings that one request may count: two days of one a second, some tens of milliseconds. */
const MOST_COUNTED = 170_000;
/** Days that one request may count even when they hold next to nothing. */
const MOST_DAYS = 60;
/** A firing that somebody forgot to finish is counted for so long. */
const LONGEST_FIRING_MS = 3 * DAY_MS;

type Limit =
  | { readonly celsius: number; readonly reason: null }
  | { readonly celsius: null; readonly reason: NonNullable<TimeAboveLimit['reason']> };

/** The limit of a probe's size, or why there is none. */
export function limitOf(probe: Probe | null): Limit {
  const none = (code: string, message: string): Limit => ({ celsius: null, reason: { code, message } });
  if (probe === null) return none('no-probe', 'nobody has said what probe this is');
  const { type, construction, millimetres } = probe;
  if (construction === null || millimetres === null)
    return none('no-size', 'how the probe is built and its diameter are not set up');
  try {
    return { celsius: recommendedUpperLimit({ type, construction, millimetres }).celsius, reason: null };
  } catch (fault) {
    if (fault instanceof PhysicsError) return none(fault.code, fault.message);
    throw fault;
  }
}

/** Over a span of a firing. */
export function timeAboveDuring(
  archive: Archive,
  channel: Channel,
  from: number,
  to: number,
): TimeAboveLimit {
  const limit = limitOf(channel.probe);
  if (limit.celsius === null) return nothing(channel, limit.reason);
  const until = Math.min(to, from + LONGEST_FIRING_MS);
  const counted = hotSpan(archive.readings, channel, limit.celsius, from, until);
  return told(channel, limit.celsius, [{ ...counted, from, to: until }], until === to);
}

/**
 * Over all that the channel ever sent. Days that are over are counted once and kept; a request counts a bounded
 * number of readings, the oldest days first, and says whether that was all.
 */
export function timeAboveEver(archive: Archive, channel: Channel, now: number): TimeAboveLimit {
  const limit = limitOf(channel.probe);
  if (limit.celsius === null) return nothing(channel, limit.reason);
  const first = archive.firstReadingAt(channel.id);
  if (first === null || first > now) return told(channel, limit.celsius, [], true);
  const kept = keptDays(archive, channel, limit.celsius);
  const spans: (HotSpan & { from: number; to: number })[] = [];
  let readings = 0;
  let days = 0;
  for (let day = Math.floor(first / DAY_MS); day * DAY_MS < now; day += 1) {
    const from = Math.max(first, day * DAY_MS);
    const to = Math.min(now, (day + 1) * DAY_MS);
    const known = kept.get(day);
    if (known === undefined && (readings > MOST_COUNTED || days > MOST_DAYS))
      return told(channel, limit.celsius, spans, false);
    const span = known ?? hotSpan(archive.readings, channel, limit.celsius, from, to);
    spans.push({ ...span, from, to });
    if (known !== undefined) continue;
    readings += span.readings;
    days += 1;
    // The last stretch of a day is known once the first reading after midnight could be there.
    if (to + channel.staleAfterSeconds * 1000 < now)
      archive.saveHotDay(channel.id, { day, limitCelsius: limit.celsius, ...figures(span) });
  }
  return told(channel, limit.celsius, spans, true);
}

function keptDays(archive: Archive, channel: Channel, limitCelsius: number): Map<number, HotSpan> {
  const days = archive.hotDays(channel.id).filter((day) => day.limitCelsius === limitCelsius);
  return new Map(days.map((day) => [day.day, { ...figures(day), readings: 0 }]));
}

function figures({ msAbove, msUnknown, peakCelsius }: Omit<HotSpan, 'readings'>): Omit<HotSpan, 'readings'> {
  return { msAbove: Math.round(msAbove), msUnknown: Math.round(msUnknown), peakCelsius };
}

function nothing({ id }: Channel, reason: TimeAboveLimit['reason']): TimeAboveLimit {
  const none = { hoursAbove: null, hoursWatched: null, peakCelsius: null, from: null, to: null };
  return { channel: id, limitCelsius: null, reason, ...none, complete: true };
}

function told(
  { id }: Channel,
  limitCelsius: number,
  spans: readonly (HotSpan & { readonly from: number; readonly to: number })[],
  complete: boolean,
): TimeAboveLimit {
  const sum = (of: (span: (typeof spans)[number]) => number) =>
    spans.reduce((total, span) => total + of(span), 0);
  const peaks = spans.flatMap(({ peakCelsius }) => (peakCelsius === null ? [] : [peakCelsius]));
  return {
    channel: id,
    limitCelsius,
    reason: null,
    hoursAbove: sum(({ msAbove }) => msAbove) / HOUR_MS,
    hoursWatched: sum(({ from, to, msUnknown }) => to - from - msUnknown) / HOUR_MS,
    peakCelsius: peaks.length === 0 ? null : Math.max(...peaks),
    from: spans[0]?.from ?? null,
    to: spans.at(-1)?.to ?? null,
    complete,
  };
}
