import type { AirChange, AirView } from '../../hub/contract/air.ts';
import { showBand } from '../../hub/contract/significant.ts';
import { timeBand } from '../heat/about.ts';
import { CONDITION_WORDS, USUAL_TAGS, ventilationWords } from '../words/air-ventilation.ts';
import { duration } from '../words/time.ts';

/** What was measured of the air changes, as people read it. Pure. */

type Ventilation = AirView['ventilation'];
/** As it comes over the wire. */
export type Fall = Ventilation['history'][number];
type Range = NonNullable<Ventilation['secondsUntilBelow']>;

/** A rate with its interval, with no more figures than the interval allows. */
export function rateText({
  airChangesPerHour,
  low,
  high,
}: Pick<AirChange['fit'], 'airChangesPerHour' | 'low' | 'high'>): {
  readonly value: string;
  readonly low: string;
  readonly high: string;
} {
  const shown = showBand({ low, value: airChangesPerHour, high }, '');
  const [, value = shown, from = '', to = ''] = /^(\S+) \((\S+) to (\S+)\)$/.exec(shown) ?? [];
  return { value, low: from === '' ? value : from, high: to === '' ? value : to };
}

/** How long until below the limit: never one figure where nobody knows it to one. */
export function waitText({ low, value, high }: Range): string {
  if (value <= 0 && (high ?? 1) <= 0) return ventilationWords.waitBelow;
  if (high === null) return ventilationWords.waitOpen(duration(low));
  return timeBand(low, high) ?? duration(high);
}

const LITRES_PER_CUBIC_METRE = 1000;

/** The highest source in litres of pure gas an hour, two figures; to be planned with the low one. */
export function sourceLitres({ low, high }: Range): { readonly low: string; readonly high: string | null } {
  const text = (cubicMetres: number) => {
    const litres = Number((cubicMetres * LITRES_PER_CUBIC_METRE).toPrecision(2));
    return litres < 10 && litres % 1 !== 0 ? String(litres) : litres.toFixed(0);
  };
  return { low: text(low), high: high === null ? null : text(high) };
}

/** Every tag to offer: the shop's own first, then the usual ones. */
export function offeredTags(known: readonly string[], present: readonly string[] | null): string[] {
  return [...new Set([...USUAL_TAGS, ...known, ...(present ?? [])])].sort((a, b) => a.localeCompare(b));
}

/** The tags after one was pressed. */
export function toggled(present: readonly string[] | null, tag: string): string[] {
  const now = present ?? [];
  return now.includes(tag) ? now.filter((other) => other !== tag) : [...now, tag];
}

export function tagsText(tags: readonly string[] | null): string {
  if (tags === null) return ventilationWords.stoodUnknown;
  return tags.length === 0 ? ventilationWords.allShut : tags.join(', ');
}

/** Falls in groups of how the shop stood, those that count before those that do not, newest first in each. */
export function byStanding(history: readonly Fall[]): Fall[] {
  const key = ({ tags }: Fall) =>
    tags === null ? '\uffff' : [...tags].sort((a, b) => a.localeCompare(b)).join();
  const broken = ({ fit }: Fall) => (fit.conditionsHeld === false ? 1 : 0);
  return [...history].sort(
    (a, b) => key(a).localeCompare(key(b)) || broken(a) - broken(b) || b.from - a.from,
  );
}

/** What of the conditions was broken, in words; empty: none. */
export function brokenText({ fit }: Fall): string {
  return fit.conditions
    .filter(({ held }) => held === false)
    .map(({ code }) => CONDITION_WORDS[code])
    .join(', ');
}
