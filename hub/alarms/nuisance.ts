import type { AlarmTransition } from '../contract/alarm-journal.ts';

/** Alarms that wear people out, found in the journal: chattering, fleeting, stale. Pure functions. */

/** Three or more activations in a minute. ISA-18.2 secondary; the standard fixes no number. */
export const CHATTERING_ACTIVATIONS = 3;
const CHATTERING_WINDOW_MS = 60_000;
/** Over by itself within this, without anybody's doing. A site rule, secondary; the standard says "seconds". */
const FLEETING_MS = 10_000;
/** Active for longer than this. ISA-18.2-2016, secondary. */
const STALE_MS = 24 * 3_600_000;

/**
 * The lasting thing that an alarm is about: every firing has an id of its own, so an alarm of a firing counts for its
 * furnace.
 */
export function placeOf({ subject, firingId, furnaceId }: AlarmTransition): string {
  return firingId !== null && subject === firingId ? (furnaceId ?? subject) : subject;
}

/** Transitions by kind and place, each in the order given. */
export function byPlace(
  transitions: readonly AlarmTransition[],
): ReadonlyMap<string, readonly AlarmTransition[]> {
  const found = new Map<string, AlarmTransition[]>();
  for (const transition of transitions) {
    const key = `${transition.kind} ${placeOf(transition)}`;
    const group = found.get(key);
    if (group === undefined) found.set(key, [transition]);
    else group.push(transition);
  }
  return found;
}

/** The largest number of instants, rising, within any stretch shorter than `windowMs`. */
export function mostWithin(times: readonly number[], windowMs: number): number {
  let most = 0;
  let first = 0;
  for (const [index, at] of times.entries()) {
    while ((times[first] ?? at) <= at - windowMs) first += 1;
    most = Math.max(most, index - first + 1);
  }
  return most;
}

export interface Chattering {
  /** The last transition of it, for its words. */
  readonly last: AlarmTransition;
  readonly activations: number;
  readonly mostInOneMinute: number;
  /** First and last activation, epoch ms. */
  readonly from: number;
  readonly to: number;
}

/** What came on three times or more within a minute. Counted whether it was announced or set aside. */
export function chatteringIn(journal: readonly AlarmTransition[]): Chattering[] {
  const found: Chattering[] = [];
  for (const group of byPlace(journal.filter(({ event }) => event === 'condition-on')).values()) {
    const times = group.map(({ at }) => at);
    const most = mostWithin(times, CHATTERING_WINDOW_MS);
    const last = group.at(-1);
    const [from] = times;
    if (most < CHATTERING_ACTIVATIONS || last === undefined || from === undefined) continue;
    found.push({ last, activations: group.length, mostInOneMinute: most, from, to: last.at });
  }
  return found.sort((a, b) => b.activations - a.activations);
}

export interface Fleeting {
  readonly last: AlarmTransition;
  readonly count: number;
}

/** What came and went within ten seconds with nobody doing anything. */
export function fleetingIn(journal: readonly AlarmTransition[]): Fleeting[] {
  const began = new Map<string, number>();
  const over: AlarmTransition[] = [];
  for (const transition of journal) {
    const { alarmId, event, at, by } = transition;
    const from = began.get(alarmId);
    if (event === 'condition-on') began.set(alarmId, at);
    else if (event === 'condition-off' || by !== null) began.delete(alarmId);
    if (event === 'condition-off' && from !== undefined && at - from <= FLEETING_MS) over.push(transition);
  }
  const groups = [...byPlace(over).values()];
  return groups
    .flatMap((group) => {
      const last = group.at(-1);
      return last === undefined ? [] : [{ last, count: group.length }];
    })
    .sort((a, b) => b.count - a.count);
}

/** What has held for more than a day at `at`, epoch ms, and is not set aside. `standing`: last word of each alarm. */
export function staleAt(standing: readonly AlarmTransition[], at: number): AlarmTransition[] {
  const aside = ['shelved', 'suppressed', 'out-of-service'];
  return standing.filter(
    ({ active, activeSince, to }) =>
      active && activeSince !== null && at - activeSince > STALE_MS && !aside.includes(to),
  );
}
