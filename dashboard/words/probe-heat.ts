import type { FiringProbe, TimeAboveLimit } from '../../hub/contract/probe.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { number, temperature } from './format.ts';
import { day } from './time.ts';

/** Words on how far a thermocouple can be trusted and how long it was hotter than is good for it. */

export const probeHeatWords = {
  head: 'How far the thermocouples can be trusted',
  short: 'Trust',
  counting: 'Still counting',
  above: (hours: string, limit: string) => `${hours} above ${limit}, the recommended limit of its size.`,
  never: (limit: string) => `Never above ${limit}, the recommended limit of its size.`,
  watched: (hours: string, since: string) => `Counted over ${hours} with readings since ${since}.`,
  wears: 'Hot wire drifts: compare it with another, or replace it.',
  part: 'So far: there is more to count.',
  noSize: 'Without how it is built and its diameter nobody can say how hot it may run.',
} as const;

/** Hours with the figures that matter: minutes below one hour. */
export function hoursText(hours: number): string {
  if (hours < 1) return `${number(hours * 60)} min`;
  return `${number(hours, hours < 10 ? 1 : 0)} h`;
}

/** Hours above the limit in a sentence; null when there is no limit to speak of. */
export function aboveText(above: TimeAboveLimit, unit: DisplayUnit): string | null {
  const { limitCelsius, hoursAbove } = above;
  if (limitCelsius === null || hoursAbove === null) return null;
  const limit = temperature(limitCelsius, unit);
  if (hoursAbove === 0) return probeHeatWords.never(limit);
  return probeHeatWords.above(hoursText(hoursAbove), limit);
}

/** The same over all that a channel ever sent, with what was counted. */
export function aboveEverText(above: TimeAboveLimit, unit: DisplayUnit): string | null {
  const said = aboveText(above, unit);
  if (said === null) return null;
  const { hoursWatched, hoursAbove, from, complete } = above;
  const counted =
    hoursWatched === null || from === null ? '' : probeHeatWords.watched(hoursText(hoursWatched), day(from));
  const wears = (hoursAbove ?? 0) > 0 ? probeHeatWords.wears : '';
  return [said, counted, wears, complete ? '' : probeHeatWords.part].filter((part) => part !== '').join(' ');
}

/** What stands beside a watched channel of a firing. */
export function trustText({ uncertainty, above }: FiringProbe, unit: DisplayUnit): string {
  return [uncertainty.text, aboveText(above, unit)].filter((part) => part !== null).join(' ');
}
