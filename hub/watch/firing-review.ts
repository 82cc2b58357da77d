import type { Archive, FiringRow } from '../archive/types.ts';
import type { FiringDetail } from '../contract/firing.ts';
import type { JudgedWhy } from '../contract/firing-record.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { JUDGE_VERSION } from '../firing/judge.ts';
import { RECORD_VERSION } from '../record/judge.ts';
import { WatchError } from './errors.ts';
import type { TrackParts } from './firing-track.ts';
import { type JudgedFiring, judgeWhole, keepVerdict } from './firing-verdicts.ts';
import { retickRoutes, tickRoutes } from './route-ticks.ts';

/** Later than this, a late reading is found through the archive instead. */
const JUST_ENDED_MS = 60_000;
/** So many firings that older rules judged are judged again after a start, the newest first; the rest on request. */
const MOST_OUTDATED = 20;
/** One in so long, and none while a furnace is watched: a long firing takes a moment to judge. */
const OUTDATED_EVERY_MS = 5000;

interface FiringReviewParts {
  readonly archive: Archive;
  /** @throws WatchError `not-found` */
  readonly row: (id: string) => FiringRow;
  readonly partsOf: (row: FiringRow) => TrackParts;
}

/** Firings that are over: their verdicts are kept, and judged again when readings come late or the rules change. */
export class FiringReview {
  readonly #parts: FiringReviewParts;
  /** Finished firings whose readings changed afterwards, waiting to be judged again. */
  readonly #dirty = new Set<string>();
  /** Firings that other rules judged, and when the last of them was judged again. */
  #outdated: readonly string[] = [];
  #outdatedAt = 0;
  /** Firings that ended a moment ago: readings of their last seconds may still be on their way. */
  #justEnded: readonly {
    readonly id: string;
    readonly endedAt: number;
    readonly watched: readonly string[];
  }[] = [];

  constructor(parts: FiringReviewParts) {
    this.#parts = parts;
  }

  /** Looks for firings that were judged by rules other than today's. */
  resume(): void {
    this.#outdated = this.#parts.archive.firingsJudgedByOthers(JUDGE_VERSION, RECORD_VERSION, MOST_OUTDATED);
  }

  /** Judges at most one again of each sort; `quiet`: no furnace is watched. */
  advance(now: number, quiet: boolean): void {
    const [dirty] = this.#dirty;
    if (dirty !== undefined) {
      this.#dirty.delete(dirty);
      this.#judgeIfOver(dirty, 'late-readings', now);
    }
    const [outdated] = this.#outdated;
    if (outdated === undefined || !quiet || now - this.#outdatedAt < OUTDATED_EVERY_MS) return;
    this.#outdated = this.#outdated.slice(1);
    this.#outdatedAt = now;
    this.#judgeIfOver(outdated, 'newer-rules', now);
  }

  /** A reading came in: a firing that ended a moment ago may be one of those that wanted it. */
  learned(reading: ChannelReading): void {
    for (const { id, endedAt, watched } of this.#justEnded) {
      if (reading.at <= endedAt && watched.includes(reading.channel)) this.#dirty.add(id);
    }
  }

  /** Readings of a channel came in for the past: finished firings that watched it are judged again. */
  learnedPast(channelId: string, from: number, to: number): void {
    for (const id of this.#parts.archive.finishedFiringsWatching(channelId, from, to)) this.#dirty.add(id);
  }

  /** A firing has ended: its verdict is kept; one that was not abandoned ticks the routes of its pieces. */
  ended(id: string, now: number): void {
    const { archive } = this.#parts;
    const row = this.#keep(id, 'ended', now);
    if (row.status === 'finished') tickRoutes(archive, this.#kept(id), now);
  }

  /** Readings of its last seconds are waited for. */
  waitFor({ id, watchedChannels }: FiringRow, endedAt: number): void {
    const recent = this.#justEnded.filter((other) => endedAt - other.endedAt < JUST_ENDED_MS);
    this.#justEnded = [...recent, { id, endedAt, watched: watchedChannels }];
  }

  /** A firing that is over, with its pieces, judged afresh; nothing is kept. */
  whole(id: string): JudgedFiring {
    const { archive, row, partsOf } = this.#parts;
    return judgeWhole(archive, partsOf(row(id)));
  }

  /**
   * Judges a firing that is over by the rules of today and keeps what they say beside what was said before. Ticks
   * that the firing made take the new verdict.
   *
   * @throws WatchError `not-found`, `conflict` while it runs
   */
  again(id: string, why: JudgedWhy, now: number): void {
    if (this.#parts.row(id).status === 'running') {
      throw new WatchError('conflict', 'this firing still runs and is judged as it goes: end it first');
    }
    this.#keep(id, why, now);
    retickRoutes(this.#parts.archive, this.#kept(id), now);
  }

  #judgeIfOver(id: string, why: JudgedWhy, now: number): void {
    const row = this.#parts.archive.firing(id);
    if (row && row.status !== 'running') this.again(id, why, now);
  }

  /** Judgement and verdicts, with what was said of it before. */
  #keep(id: string, why: JudgedWhy, now: number): FiringRow {
    const { archive, partsOf } = this.#parts;
    const row = this.#parts.row(id);
    const judged = judgeWhole(archive, partsOf(row));
    keepVerdict(archive, row, judged, { why, now });
    archive.saveJudgement(id, judged.judgement);
    return row;
  }

  #kept(id: string): FiringDetail {
    const { judgement, confirmations: _, ...firing } = this.#parts.row(id);
    if (judgement === null) throw new Error(`judgement-missing: firing ${id} was judged a moment ago`);
    return { ...firing, judgement };
  }
}
