import type { ShopChange } from '../contract/batch-statistics.ts';
import type { ScheduleReference } from '../contract/comparison.ts';
import type { FiringSummary, FiringVerdict, SegmentResult } from '../contract/firing.ts';
import type { Observation } from '../contract/observation.ts';
import type { Segment } from '../contract/schedule.ts';

/** What the archive answers when firings are looked back upon together. */

export interface BatchFilter {
  readonly scheduleId?: string | undefined;
  readonly furnaceId?: string | undefined;
  readonly limit: number;
}

/** One finished firing with one segment of it, as planned and as it was. */
export interface BatchFiring {
  readonly id: string;
  readonly startedAt: number;
  readonly title: string;
  readonly furnaceId: string;
  readonly furnaceName: string;
  readonly scheduleVersion: number;
  readonly verdict: FiringVerdict;
  readonly marks: readonly string[];
  /** Null: its schedule had no such segment. */
  readonly planned: Segment | null;
  /** Null: it was never judged so far. */
  readonly result: Pick<SegmentResult, 'state' | 'meanCelsius' | 'peakCelsius' | 'soakSeconds'> | null;
}

/** A hardness reading with the firing it speaks of: the one it names, else the last before it that held its piece. */
export interface HardnessSeen {
  readonly observation: Observation;
  readonly mark: string;
  readonly firing: Omit<BatchFiring, 'planned' | 'result' | 'marks'> | null;
}

/** A soak of a firing: mean of the coldest watched channel, °C, and the soak clock, seconds. */
export interface HeldSoak {
  readonly celsius: number;
  readonly seconds: number;
}

/** What people decided and changed, to look back by. */
export interface ReviewNotes {
  scheduleReference(scheduleId: string): ScheduleReference | null;
  /** Takes the place of the one before. It goes when its firing is deleted. */
  chooseReference(chosen: ScheduleReference): ScheduleReference;
  dropReference(scheduleId: string): boolean;
  /** With from <= at <= to, the oldest first; of very many the newest. */
  shopChanges(from: number, to: number): readonly ShopChange[];
  /** Append-only: what was said is never changed or taken back. */
  addShopChange(draft: Omit<ShopChange, 'id'>): ShopChange;
}

export interface ReviewStore extends ReviewNotes {
  /** Finished firings, the newest first. */
  batch(filter: BatchFilter & { readonly segment: number }): readonly BatchFiring[];
  /** Hardness readings, the newest first. */
  hardnessSeen(filter: BatchFilter): readonly HardnessSeen[];
  /** The soaks of a firing that are known, in order. */
  heldSoaks(firingId: string): readonly HeldSoak[];
  /** Of those ids that are there, in no order. */
  summariesOf(ids: readonly string[]): readonly FiringSummary[];
}
