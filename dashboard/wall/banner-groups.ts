import type { Alarm } from '../../hub/contract/alarm.ts';
import { groupAlarms } from '../../hub/contract/alarm-groups.ts';

/** What the banner says of all that stands: the most urgent action, what comes of it, and what else there is. Pure. */

/** A few by name, the rest by number. */
export interface Named {
  readonly named: readonly Alarm[];
  readonly more: number;
  /** How many of those not named are about danger to life. */
  readonly moreMortal: number;
}

export interface BannerAlarms {
  readonly lead: Alarm;
  /** What follows from the same cause. */
  readonly followers: Named;
  /** What has another cause. */
  readonly others: Named;
}

/** How many are named in each list. */
const MOST_NAMED = 2;

/** Null: nothing stands. */
export function bannerAlarms(alarms: Iterable<Alarm>): BannerAlarms | null {
  const [first, ...rest] = groupAlarms(alarms);
  if (first === undefined) return null;
  const others = rest.flatMap(({ lead, followers }) => [lead, ...followers]);
  return { lead: first.lead, followers: named(first.followers), others: named(others) };
}

/** Danger to life is named before anything else: it must never be a mere number while something smaller has a name. */
function named(alarms: readonly Alarm[]): Named {
  const mortal = alarms.filter(isMortal);
  const sorted = [...mortal, ...alarms.filter((alarm) => !isMortal(alarm))];
  const rest = sorted.slice(MOST_NAMED);
  return {
    named: sorted.slice(0, MOST_NAMED),
    more: rest.length,
    moreMortal: rest.filter(isMortal).length,
  };
}

const isMortal = ({ dangerToLife }: Alarm): boolean => dangerToLife;
