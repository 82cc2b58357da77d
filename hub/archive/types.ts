import type { Firing, FiringJudgement, FiringSummary, FiringVerdict, Note } from '../contract/firing.ts';
import type { Probe } from '../contract/probe.ts';
import type {
  ChannelReading,
  Gap,
  Quality,
  QualityReason,
  Reading,
  ReadingSeries,
} from '../contract/reading.ts';
import type { Schedule, ScheduleDraft } from '../contract/schedule.ts';
import type {
  Binding,
  Channel,
  Furnace,
  NodeStatus,
  Refusal,
  Shop,
  ShopNode,
  ShopSettings,
} from '../contract/shop.ts';
import type { Quantity } from '../contract/units.ts';
import type { AirStore } from './air-types.ts';
import type { AlarmStore } from './alarm-types.ts';
import type { GasStore } from './gas-types.ts';
import type { HotDayStore } from './hot-day-types.ts';
import type { NotifyStore } from './notify-types.ts';
import type { OwnSteelStore } from './own-steel-types.ts';
import type { PieceStore } from './piece-types.ts';
import type { ReviewStore } from './review-types.ts';
import type { VerdictStore } from './verdict-types.ts';

export type { AlarmFilter, AlarmRow } from './alarm-types.ts';

/**
 * What the archive promises. Nothing outside `hub/archive` knows how a reading is stored.
 * Every call is synchronous: when it returns, the change is committed (WAL, synchronous=FULL).
 */

/** Dates of a gas sensor; null where nobody has said. */
export type SensorDates = Pick<Channel, 'calibratedAt' | 'calibrationDueAt' | 'endOfLifeAt'>;

/** One decoded value of one payload, in base units, before the archive knows its channel. */
export interface IncomingReading {
  readonly name: string;
  readonly quantity: Quantity;
  readonly at: number;
  readonly value: number;
  readonly quality: Quality;
  readonly reason?: QualityReason;
}

export interface IncomingRefusal {
  readonly topic: string;
  readonly reason: string;
  readonly detail: string;
  readonly payload: Uint8Array;
}

/** What one payload asks the archive to keep. */
export interface IntakeWrite {
  readonly node: string;
  readonly receivedAt: number;
  /** Where it came from and what it said, for the refusals that only the archive can find (see `commitIntake`). */
  readonly topic?: string;
  readonly payload?: Uint8Array;
  readonly status?: Exclude<NodeStatus, 'unknown'>;
  readonly readings: readonly IncomingReading[];
  readonly refusals: readonly IncomingRefusal[];
}

/** What a commit changed, for those who watch. Only readings that were new are told. */
export interface IntakeCommit {
  readonly readings: readonly ChannelReading[];
  readonly duplicates: number;
  readonly nodes: readonly ShopNode[];
  /** Channels that were created (offered for adoption) by this commit. */
  readonly channels: readonly Channel[];
  readonly refusals: readonly Refusal[];
}

/** The readings, behind a small door: rows today, sealed blocks tomorrow. */
export interface ReadingStore {
  /** Stores each (channel, instant) once; the first value stays. Returns those that were new, in input order. */
  append(readings: readonly ChannelReading[]): readonly ChannelReading[];
  /** Every reading with from <= at <= to, in time order. */
  range(channelId: string, from: number, to: number): readonly Reading[];
  /** At most `points` readings; when thinned, each slice keeps its lowest and highest good reading. */
  series(channel: Channel, from: number, to: number, points: number): ReadingSeries;
  /**
   * Stretches longer than `staleAfterMs` without a good reading inside [from, to], those at both ends included:
   * so `to` must not lie in the future.
   */
  gaps(channelId: string, from: number, to: number, staleAfterMs: number): readonly Gap[];
  /** The newest that is not from the future; while there are only such, the newest of them. */
  latest(channelId: string): Reading | null;
}

export interface FiringRow extends Firing {
  /** The last judged state that was kept; null before the first. */
  readonly judgement: FiringJudgement | null;
  readonly confirmations: readonly { readonly at: number; readonly segment: number }[];
}

/** A firing without its judgement: what a judge wants at every tick, and cheap to read. */
export type FiringCourse = Omit<FiringRow, 'judgement'>;

/** The newest start first; `before` is exclusive. */
export interface FiringFilter {
  /** Words of which each must stand in title, note, schedule, a mark of its load, or the name of its furnace. */
  readonly q?: string | undefined;
  readonly scheduleId?: string | undefined;
  readonly verdict?: FiringVerdict | undefined;
  readonly simulated?: boolean | undefined;
  /** Begun at or after this instant. */
  readonly from?: number | undefined;
  /** The id of the last row of the page before. */
  readonly after?: string | undefined;
  readonly status?: Firing['status'] | undefined;
  readonly furnaceId?: string | undefined;
  readonly before?: number | undefined;
  readonly limit: number;
}

export interface Archive
  extends AirStore,
    GasStore,
    PieceStore,
    AlarmStore,
    OwnSteelStore,
    HotDayStore,
    NotifyStore,
    ReviewStore,
    VerdictStore {
  readonly readings: ReadingStore;

  shop(): Shop;
  saveSettings(settings: ShopSettings, at: number): Shop;

  furnaces(): readonly Furnace[];
  furnace(id: string): Furnace | null;
  createFurnace(
    draft: Omit<Furnace, 'id' | 'fit' | 'gas' | 'archived' | 'createdAt'> & Partial<Pick<Furnace, 'gas'>>,
    at: number,
  ): Furnace;
  saveFurnace(furnace: Furnace, at: number): Furnace;

  nodes(): readonly ShopNode[];
  node(idOrName: string): ShopNode | null;
  createNode(draft: { name: string; label: string; note: string }, at: number): ShopNode;
  /** Writes name, label, note and adoption; what a node says of itself comes by `commitIntake` alone. */
  saveNode(node: ShopNode): ShopNode;
  /** Every node's status becomes unknown: said at start, before the first word from any of them. */
  forgetNodeStatus(at: number): void;

  channels(): readonly Channel[];
  channel(id: string): Channel | null;
  createChannel(
    draft: Omit<
      Channel,
      'id' | 'adopted' | 'archived' | 'createdAt' | 'latest' | 'baseUnit' | 'probe' | keyof SensorDates
    > & { readonly probe?: Probe | null } & Partial<SensorDates>,
    at: number,
  ): Channel;
  saveChannel(channel: Channel): Channel;

  bindings(): readonly Binding[];
  createBinding(draft: Omit<Binding, 'id' | 'createdAt'>, at: number): Binding;
  deleteBinding(id: string): boolean;

  refusals(filter: { node?: string | undefined; limit: number }): readonly Refusal[];
  /**
   * One transaction for a group of payloads: readings, unknown nodes and channels, statuses, refusals.
   *
   * Unknown nodes and channels are made, not yet adopted, so that their readings are kept from the first word.
   * The archive itself counts these refusals, once for each payload and reason, and keeps the payload at most
   * once a minute: `unknown-channel` (kept all the same, until a person adopts the channel), `wrong-quantity`,
   * `bad-name`, `bad-value`, `too-many-unknown`.
   */
  commitIntake(writes: readonly IntakeWrite[]): IntakeCommit;

  schedules(): readonly Schedule[];
  schedule(id: string): Schedule | null;
  createSchedule(draft: ScheduleDraft, at: number): Schedule;
  /** Makes a new version under the same id; earlier versions stay. */
  reviseSchedule(id: string, draft: ScheduleDraft, at: number): Schedule;
  archiveSchedule(id: string, at: number): boolean;

  firings(filter: FiringFilter): readonly FiringSummary[];
  firing(id: string): FiringRow | null;
  firingCourse(id: string): FiringCourse | null;
  runningFirings(): readonly FiringRow[];
  /** Ids of firings that are over and that watched this channel at some instant of [from, to]. */
  finishedFiringsWatching(channelId: string, from: number, to: number): readonly string[];
  createFiring(firing: Omit<Firing, 'id'>): FiringRow;
  /** Writes title, note, status, start and end; the frozen schedule, watched channels and load stay. */
  saveFiring(firing: Firing): void;
  /** Keeps the judged state: the segment results as rows, the rest as one document. */
  saveJudgement(firingId: string, judgement: FiringJudgement): void;
  /** The first confirmation of a segment counts; a second changes nothing. */
  confirmSegment(firingId: string, segment: number, at: number): void;
  /** With its results, notes and the alarms about it; never readings. A running one is a `conflict`. */
  deleteFiring(id: string): boolean;

  notes(firingId: string): readonly Note[];
  addNote(note: Omit<Note, 'id'>): Note;

  /** True when the file answers: for /healthz. */
  alive(): boolean;
  close(): void;
}
