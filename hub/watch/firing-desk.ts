import type { Archive, FiringCourse, FiringFilter, FiringRow } from '../archive/types.ts';
import type { Finding } from '../contract/alarm.ts';
import type {
  Firing,
  FiringDetail,
  FiringDraft,
  FiringJudgement,
  FiringSummary,
} from '../contract/firing.ts';
import type { LiveFiring } from '../contract/live.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { ChangeBus } from './changes.ts';
import { WatchError } from './errors.ts';
import { checkInstants, refuseBeyondRating, refuseBusy, refuseElsewhere } from './firing-checks.ts';
import { needFurnace, needSchedule, watchedChannelsOf } from './firing-needs.ts';
import { FiringReview } from './firing-review.ts';
import { FiringTrack, judgeFromArchive, type TrackParts } from './firing-track.ts';
import type { JudgedFiring } from './firing-verdicts.ts';
import type { LoadAsked, LoadResolver } from './load.ts';

interface FiringDeskParts {
  readonly archive: Archive;
  readonly bus: ChangeBus;
  readonly simulated: boolean;
  /** Freezes the pieces of a load, their steel taken in. */
  readonly resolveLoad: LoadResolver;
}

/** Starts, carries on and ends firings. The judged state is kept now and then; the truth is the readings. */
export class FiringDesk {
  readonly #archive: Archive;
  readonly #bus: ChangeBus;
  readonly #simulated: boolean;
  readonly #resolveLoad: LoadResolver;
  readonly #tracks = new Map<string, FiringTrack>();
  readonly #review: FiringReview;

  constructor(parts: FiringDeskParts) {
    this.#archive = parts.archive;
    this.#bus = parts.bus;
    this.#simulated = parts.simulated;
    this.#resolveLoad = parts.resolveLoad;
    this.#review = new FiringReview({
      archive: parts.archive,
      row: (id) => this.#row(id),
      partsOf: (row) => this.#parts(row),
    });
  }

  /** Takes up every firing that was running when the hub stopped: a restart is a replay. */
  resume(now: number): void {
    for (const row of this.#archive.runningFirings()) {
      const track = this.#track(row);
      track.advance(now);
      this.#tracks.set(row.id, track);
    }
    this.#review.resume();
  }

  /** Settings or channels changed: the judges of running firings start again with them. */
  restart(now: number): void {
    this.#tracks.clear();
    this.resume(now);
  }

  advance(now: number): readonly Finding[] {
    const findings: Finding[] = [];
    for (const [id, track] of this.#tracks) {
      track.advance(now);
      findings.push(...track.findings());
      this.#tellRunning(id, track);
    }
    this.#review.advance(now, this.#tracks.size === 0);
    return findings;
  }

  learned(reading: ChannelReading): void {
    for (const track of this.#tracks.values()) {
      if (track.watches(reading.channel)) track.learned(reading.at);
    }
    this.#review.learned(reading);
  }

  /** Readings of a channel came in for the past: finished firings that watched it are judged again. */
  learnedPast(channelId: string, from: number, to: number): void {
    this.#review.learnedPast(channelId, from, to);
  }

  /** Rows of the list; what a running firing has reached is told as it is now, not as it was last kept. */
  summaries(filter: FiringFilter): FiringSummary[] {
    return this.#archive.firings(filter).map((row) => this.asReached(row));
  }

  /** A row as it is now: what a running firing has reached stands in its track. */
  asReached(row: FiringSummary): FiringSummary {
    const track = this.#tracks.get(row.id);
    return track ? { ...row, ...reached(track.judgement()) } : row;
  }

  live(): LiveFiring[] {
    return [...this.#tracks].flatMap(([id, track]) => this.#liveOf(id, track) ?? []);
  }

  /** The furnace of a running firing, for placing its alarms. */
  furnaceOf(firingId: string): string | null {
    return this.#archive.firingCourse(firingId)?.furnaceId ?? null;
  }

  detail(id: string): FiringDetail {
    const row = this.#row(id);
    const { judgement, confirmations: _, ...firing } = row;
    const track = this.#tracks.get(id);
    return { ...firing, judgement: track?.judgement() ?? judgement ?? this.#judge(row) };
  }

  /** The judgement of a row as it stands now, without judging it anew; null: none yet. */
  judgementNow(row: FiringRow): FiringJudgement | null {
    return this.#tracks.get(row.id)?.judgement() ?? row.judgement;
  }

  /** The firing judged afresh from what the archive holds now; nothing is kept. */
  rejudge(id: string): FiringJudgement {
    const track = this.#tracks.get(id);
    return track ? track.judgement() : this.#judge(this.#row(id));
  }

  /** A firing that is over, with its pieces, judged afresh; nothing is kept. */
  judgedWhole(id: string): JudgedFiring {
    return this.#review.whole(id);
  }

  /**
   * Judges a firing that is over by the rules of today and keeps what they say beside what was said before.
   *
   * @throws WatchError `not-found`, `conflict` while it runs
   */
  judgeAgain(id: string, now: number): FiringDetail {
    this.#review.again(id, 'asked', now);
    return this.detail(id);
  }

  start(draft: FiringDraft, now: number): FiringDetail {
    const furnace = needFurnace(this.#archive, draft.furnaceId);
    const schedule = needSchedule(this.#archive, draft.scheduleId);
    const startedAt = draft.startedAt ?? now;
    const endedAt = draft.endedAt ?? null;
    checkInstants(startedAt, endedAt, now);
    refuseBeyondRating(furnace, schedule);
    const pieces = this.#resolveLoad(draft.pieces);
    if (endedAt === null) {
      refuseBusy(furnace, this.#archive.runningFirings());
      refuseElsewhere(pieces, this.#archive.runningFirings());
    }
    const row = this.#archive.createFiring({
      furnaceId: furnace.id,
      title: draft.title || schedule.name,
      note: draft.note,
      status: endedAt === null ? 'running' : 'finished',
      simulated: this.#simulated,
      startedAt,
      endedAt,
      schedule,
      watchedChannels: watchedChannelsOf(this.#archive, furnace),
      pieces,
      createdAt: now,
    });
    this.#freezeProbes(row, now);
    for (const { segment, at } of draft.confirmations) this.#archive.confirmSegment(row.id, segment, at);
    if (endedAt === null) this.#begin(row, now);
    else this.#review.ended(row.id, now);
    return this.detail(row.id);
  }

  /**
   * Changes what lies in a running firing, and says so in its notes. The judge starts again by replay.
   *
   * @throws WatchError `not-running`, `in-use` (a piece lies in another furnace), and as {@link LoadResolver}
   */
  changeLoad(id: string, asked: LoadAsked, now: number): { before: FiringDetail; after: FiringDetail } {
    this.#running(id);
    const before = this.detail(id);
    const pieces = this.#resolveLoad(asked);
    const others = this.#archive.runningFirings().filter((row) => row.id !== id);
    refuseElsewhere(pieces, others);
    this.#archive.saveLoad(id, pieces);
    this.#begin(this.#row(id), now);
    return { before, after: this.detail(id) };
  }

  confirm(id: string, segment: number, now: number): FiringDetail {
    const track = this.#running(id);
    track.advance(now);
    const judgement = track.judgement();
    if (judgement.segmentIndex !== segment) {
      throw new WatchError(
        'nothing-to-confirm',
        `segment ${segment + 1} is not the one running (that is segment ${judgement.segmentIndex + 1}): look at the wall and confirm again`,
      );
    }
    this.#archive.confirmSegment(id, segment, now);
    track.learned(now);
    track.advance(now);
    this.#tellRunning(id, track);
    return this.detail(id);
  }

  finish(id: string, at: number, abandoned: boolean): FiringDetail {
    this.#running(id);
    const row = this.#row(id);
    if (at < row.startedAt) {
      throw new WatchError('invalid-request', 'a firing cannot end before it started: send a later `at`');
    }
    const { judgement: _j, confirmations: _c, ...firing } = row;
    const ended: Firing = { ...firing, status: abandoned ? 'abandoned' : 'finished', endedAt: at };
    this.#archive.saveFiring(ended);
    this.#tracks.delete(id);
    this.#review.waitFor(row, at);
    this.#review.ended(id, at);
    this.#bus.tell({ type: 'firing', id, live: null });
    return this.detail(id);
  }

  /** Changes the words about a firing, never its course. */
  rename(id: string, words: { title?: string; note?: string }): void {
    const { judgement: _j, confirmations: _c, ...firing } = this.#row(id);
    this.#archive.saveFiring({ ...firing, ...words });
  }

  /** Keeps the judged state of everything that runs, so that lists and a crash know it. */
  keep(): void {
    for (const [id, track] of this.#tracks) this.#archive.saveJudgement(id, track.judgement());
  }

  #begin(row: FiringRow, now: number): void {
    const track = this.#track(row);
    track.advance(now);
    this.#tracks.set(row.id, track);
    this.#archive.saveJudgement(row.id, track.judgement());
    this.#tellRunning(row.id, track);
  }

  /** What stands behind the watched channels now: a later calibration changes no record. */
  #freezeProbes({ id, watchedChannels }: FiringRow, now: number): void {
    const watched = this.#archive.channels().filter((channel) => watchedChannels.includes(channel.id));
    this.#archive.freezeProbes(
      id,
      watched.map(({ id: channel, probe }) => ({ channel, probe, frozenAt: now })),
    );
  }

  #judge(row: FiringRow): FiringJudgement {
    return judgeFromArchive(this.#parts(row), row.endedAt ?? row.startedAt);
  }

  #track(row: FiringRow): FiringTrack {
    return new FiringTrack(this.#parts(row));
  }

  #parts(row: FiringRow): TrackParts {
    return {
      row: () => this.#course(row.id),
      furnace: needFurnace(this.#archive, row.furnaceId),
      channels: this.#archive.channels(),
      settings: this.#archive.shop().settings,
      readings: this.#archive.readings,
    };
  }

  #liveOf(id: string, track: FiringTrack): LiveFiring | null {
    const row = this.#archive.firingCourse(id);
    if (!row) return null;
    const { confirmations: _c, ...firing } = row;
    const { events, ...judgement } = track.judgement();
    return { firing, judgement, arrests: events.filter(({ kind }) => kind === 'arrest') };
  }

  #tellRunning(id: string, track: FiringTrack): void {
    if (!this.#bus.isHeard('firing')) return;
    this.#bus.tell({ type: 'firing', id, live: this.#liveOf(id, track) });
  }

  #row(id: string): FiringRow {
    const row = this.#archive.firing(id);
    if (!row) throw new WatchError('not-found', `there is no firing ${id}`);
    return row;
  }

  #course(id: string): FiringCourse {
    const row = this.#archive.firingCourse(id);
    if (!row) throw new WatchError('not-found', `there is no firing ${id}`);
    return row;
  }

  #running(id: string): FiringTrack {
    const track = this.#tracks.get(id);
    if (track) return track;
    this.#row(id);
    throw new WatchError(
      'not-running',
      'this firing is over: nothing about its course can be changed any more',
    );
  }
}

function reached({
  segments,
  verdict,
}: FiringJudgement): Pick<FiringSummary, 'peakCelsius' | 'soakSeconds' | 'verdict'> {
  const peaks = segments.flatMap((segment) => segment.peakCelsius ?? []);
  return {
    verdict,
    peakCelsius: peaks.length > 0 ? Math.max(...peaks) : null,
    soakSeconds: segments.reduce((sum, segment) => sum + segment.soakSeconds, 0),
  };
}
