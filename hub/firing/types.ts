import type { Params } from '../contract/alarm.ts';
import type { FiringEvent } from '../contract/firing.ts';
import type { LoadPiece } from '../contract/load.ts';
import type { ChannelReading, Gap } from '../contract/reading.ts';
import type { Schedule } from '../contract/schedule.ts';
import type { ChannelRole, Furnace, ShopSettings } from '../contract/shop.ts';
import type { ConditionState } from '../judging/condition.ts';
import type { HeldChannel } from '../judging/held.ts';
import type { Sample } from '../judging/slope.ts';
import type { Forecaster } from '../physics/forecast/forecaster.ts';
import type { ArrestTrack } from './arrests.ts';
import type { Ahead } from './forecast/ahead.ts';
import type { Snapshot } from './forecast/snapshot.ts';
import type { LoadTrack } from './load/load.ts';

/** A channel that the soak clock listens to, frozen at the start of the firing. */
export interface WatchedChannel {
  readonly id: string;
  readonly staleAfterSeconds: number;
  readonly role: ChannelRole;
}

/** How a furnace heats what lies in it: effective emissivity, 0 to 1, and film coefficient, W/(m² K). */
export interface FurnaceMeeting {
  readonly emissivity: number;
  readonly filmWM2K: number;
}

/** Everything about a firing that does not change while it runs. */
export interface FiringCase {
  readonly firingId: string;
  readonly furnaceId: string;
  readonly furnaceName: string;
  readonly furnaceKind: Furnace['kind'];
  /** Epoch ms. */
  readonly startedAt: number;
  readonly schedule: Schedule;
  readonly watched: readonly WatchedChannel[];
  /** The load, frozen at the start; empty: not known. */
  readonly pieces: readonly LoadPiece[];
  /** What was fitted to this furnace; null: the usual values of its kind. */
  readonly fit: FurnaceMeeting | null;
  readonly settings: Pick<
    ShopSettings,
    'overshootAheadSeconds' | 'soakStalledSeconds' | 'rampStalledSeconds' | 'language'
  >;
}

/** What moves a firing on. Every instant in epoch ms. */
export type FiringInput =
  | { readonly kind: 'reading'; readonly reading: ChannelReading }
  | { readonly kind: 'tick'; readonly at: number }
  | { readonly kind: 'confirm'; readonly at: number; readonly segment: number }
  | { readonly kind: 'finish'; readonly at: number };

/** The instant of an input, epoch ms. */
export function instantOf(input: FiringInput): number {
  return input.kind === 'reading' ? input.reading.at : input.at;
}

export type Direction = 'up' | 'down';

/** One segment as it was lived through. Milliseconds are whole, so sums are exact. */
export interface SegmentTrack {
  readonly state: 'waiting' | 'running' | 'done' | 'skipped';
  readonly startedAt: number | null;
  readonly endedAt: number | null;
  readonly endedBy: 'reached' | 'confirmed' | 'finished' | null;
  /** The smith has said that the piece is out (cooling outside the furnace). Epoch ms. */
  readonly confirmedAt: number | null;
  /** Which way a ramp goes, known at its first measured value. */
  readonly direction: Direction | null;
  readonly startCelsius: number | null;
  readonly endCelsius: number | null;
  /** Computed core of the slowest piece at the end; null: not known. */
  readonly endCoreCelsius: number | null;
  /** The soak clock. */
  readonly soakMs: number;
  /** Time with the coldest channel inside tolerance, and with the core inside it by the coldest assumption. */
  readonly airSoakMs: number;
  readonly lowSoakMs: number;
  readonly blindMs: number;
  readonly seenMs: number;
  /** Integral of the coldest value over the time seen, °C ms. */
  readonly coldestIntegral: number;
  readonly peakCelsius: number | null;
  readonly lowestCelsius: number | null;
  readonly overCelsius: number;
  readonly aboveMs: number;
  /** Time seen outside tolerance after the soak clock first ran. */
  readonly interruptedMs: number;
  readonly steepestPerSecond: number | null;
  readonly rateViolationMs: number;
  /** Nearest to the target so far, and how long (seen) since it last came nearer. */
  readonly markCelsius: number | null;
  readonly sinceMarkMs: number;
}

export const CONDITION_NAMES = [
  'overshoot',
  'overshoot-ahead',
  'soak-stalled',
  'ramp-stalled',
  'soak-outside',
  'too-fast',
  'too-slow',
] as const;
export type ConditionName = (typeof CONDITION_NAMES)[number];
export type Conditions = Readonly<Record<ConditionName, ConditionState>>;

/** An event without its words: those are made when it is shown. */
export type EventTrack = Omit<FiringEvent, 'text' | 'params'> & { readonly params: Params };

/** Where a firing stands. Plain immutable data: a state may be kept and stepped again from. */
export interface FiringState {
  /** Judged up to this instant, epoch ms. Starts before `startedAt` so that values already known count. */
  readonly at: number;
  readonly finishedAt: number | null;
  /** In the order of `FiringCase.watched`. */
  readonly channels: readonly HeldChannel[];
  /** Running segment; equal to the number of segments when all are over; -1 before the start. */
  readonly index: number;
  readonly segments: readonly SegmentTrack[];
  /** Coldest and hottest over the last minute; coldest about every 5 s over the last five minutes. */
  readonly coldestWindow: readonly Sample[];
  readonly hottestWindow: readonly Sample[];
  readonly longWindow: readonly Sample[];
  readonly blindSince: number | null;
  readonly gaps: readonly Gap[];
  readonly events: readonly EventTrack[];
  readonly conditions: Conditions;
  /** In the order of `FiringCase.watched`; null: no reading yet. */
  readonly forecasters: readonly (Forecaster | null)[];
  readonly ahead: Ahead;
  /** What forecasts are made from. */
  readonly snapshot: Snapshot;
  /** The pieces as they are computed; null: none is known, or nothing was measured yet. */
  readonly load: LoadTrack | null;
  /** In the order of `FiringCase.watched`. */
  readonly arrests: readonly ArrestTrack[];
}
