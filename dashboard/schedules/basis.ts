import type { Segment } from '../../hub/contract/schedule.ts';
import type { PlanReason, ScheduleBasis } from '../../hub/contract/schedule-basis.ts';

/** The reasons of a schedule as they stand to what the schedule says now. Pure. */

export interface StandingReason {
  readonly reason: PlanReason;
  /** A person has since changed the number that this is the reason of. */
  readonly changed: boolean;
}

export interface SegmentReasons {
  readonly index: number;
  readonly reasons: readonly StandingReason[];
}

/** Reasons by segment, in the order of the segments; numbers that were changed by hand say so. */
export function reasonsBySegment(
  basis: ScheduleBasis,
  segments: readonly Segment[],
): readonly SegmentReasons[] {
  const found = new Map<number, StandingReason[]>();
  for (const reason of basis.reasons) {
    const [, , index = '', field = ''] = reason.path.split('/');
    const place = Number(index);
    const now = fieldOf(segments[place], field);
    const list = found.get(place) ?? [];
    list.push({ reason, changed: !same(now, reason.value) });
    found.set(place, list);
  }
  return [...found].sort(([a], [b]) => a - b).map(([index, reasons]) => ({ index, reasons }));
}

function fieldOf(segment: Segment | undefined, field: string): unknown {
  if (segment === undefined) return undefined;
  return Object.entries(segment).find(([key]) => key === field)?.[1] ?? null;
}

/** A number typed in °F and back is not the same to the last digit. */
function same(now: unknown, proposed: PlanReason['value']): boolean {
  if (typeof now === 'number' && typeof proposed === 'number') return Math.abs(now - proposed) < 0.05;
  return now === proposed;
}
