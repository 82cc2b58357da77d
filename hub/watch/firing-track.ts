import type { FiringCourse, ReadingStore } from '../archive/types.ts';
import type { FiringJudgement } from '../contract/firing.ts';
import type { Channel, Furnace, ShopSettings } from '../contract/shop.ts';
import { findingsOf, judgementOf, startFiring, stepFiring } from '../firing/judge.ts';
import { inputsInOrder } from '../firing/replay.ts';
import type { FiringCase, FiringInput, FiringState } from '../firing/types.ts';
import { Timeline } from './timeline.ts';

/** The judge looks at the clock once a second, on the grid of the firing's own start. */
export const TICK_MS = 1000;

export interface TrackParts {
  readonly row: () => FiringCourse;
  readonly furnace: Furnace;
  readonly channels: readonly Channel[];
  readonly settings: ShopSettings;
  readonly readings: ReadingStore;
}

export function caseOf(parts: TrackParts): FiringCase {
  const row = parts.row();
  return {
    firingId: row.id,
    furnaceId: row.furnaceId,
    furnaceName: parts.furnace.name,
    furnaceKind: parts.furnace.kind,
    startedAt: row.startedAt,
    schedule: row.schedule,
    watched: row.watchedChannels.flatMap((id) => {
      const channel = parts.channels.find((candidate) => candidate.id === id);
      return channel ? [{ id, staleAfterSeconds: channel.staleAfterSeconds, role: channel.role }] : [];
    }),
    pieces: row.pieces,
    fit: meetingOf(parts.furnace),
    settings: parts.settings,
  };
}

/** What was fitted to the furnace; null: nothing was. */
function meetingOf({ fit }: Furnace): FiringCase['fit'] {
  if (fit === null) return null;
  return { emissivity: fit.effectiveEmissivity, filmWM2K: fit.filmWattsPerSquareMetreKelvin };
}

/** One firing's judge, fed from the archive: live, after a restart and in review it is the same replay. */
export class FiringTrack {
  readonly #case: FiringCase;
  readonly #timeline: Timeline<FiringState, FiringInput>;

  /** `see` is told of every state as it is reached; after a late reading also of states that it was told before. */
  constructor(parts: TrackParts, see: (state: FiringState) => void = () => {}) {
    const firing = caseOf(parts);
    this.#case = firing;
    const inputs = (after: number, upTo: number): Iterable<FiringInput> => {
      const { confirmations, endedAt } = parts.row();
      return inputsInOrder({
        readings: firing.watched.map(({ id }) =>
          parts.readings.range(id, after + 1, upTo).map((reading) => ({ ...reading, channel: id })),
        ),
        confirmations,
        finishedAt: endedAt,
        startedAt: firing.startedAt,
        from: after,
        to: upTo,
        tickMs: TICK_MS,
      });
    };
    const start = startFiring(firing);
    this.#timeline = new Timeline(
      {
        start: () => start,
        step(state, input) {
          const next = stepFiring(firing, state, input);
          see(next);
          return next;
        },
        inputs,
      },
      start.at,
    );
  }

  watches(channelId: string): boolean {
    return this.#case.watched.some((channel) => channel.id === channelId);
  }

  /** Something at `at` became known: a late reading, a confirmation, the end. */
  learned(at: number): boolean {
    return this.#timeline.rewindBefore(at);
  }

  advance(to: number): void {
    this.#timeline.advance(to);
  }

  findings(): ReturnType<typeof findingsOf> {
    return findingsOf(this.#case, this.#timeline.state);
  }

  judgement(): FiringJudgement {
    return judgementOf(this.#case, this.#timeline.state);
  }
}

/** Judges a whole firing from the archive, as it would have been judged live. */
export function judgeFromArchive(parts: TrackParts, upTo: number): FiringJudgement {
  const track = new FiringTrack(parts);
  track.advance(upTo);
  return track.judgement();
}
