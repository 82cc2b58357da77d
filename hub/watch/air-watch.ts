import { type AirCell, airCells, CELL_MS, cellEdge } from '../air/cell.ts';
import { DAY_MS, dayDecays, dayFindings, startDay, stepDay } from '../air/day.ts';
import type { DayConfig, DayState } from '../air/day-types.ts';
import { airFindings, startAir, stepAir } from '../air/judge.ts';
import type { AirConfig, AirInput, AirState } from '../air/types.ts';
import type { Archive } from '../archive/types.ts';
import type { Finding } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { airChannels, airConfig, dayConfig, heardOf } from './air-config.ts';
import { merge, readingsOf } from './shop-inputs.ts';
import { Timeline } from './timeline.ts';

/** How far back the judge of the instant looks when it starts: its delays are seconds, so this is ample. */
const LOOK_BACK_MS = 600_000;
/** A reading is given this long to arrive before its cell is judged; a later one takes the judge back. */
const ARRIVAL_MS = 2_000;

/**
 * Carries the two judges of the air: of the instant, reading by reading, and of the day, in cells of ten seconds
 * over the last twelve hours. The day's judge is seeded out of the archive when it starts: 4320 cells, 0.25 s for each
 * carbon monoxide sensor once the code is warm and three times that in a hub just started (one core of a small
 * server), whatever the nodes' pace.
 */
export class AirWatch {
  readonly #archive: Archive;
  readonly #config: AirConfig;
  readonly #dayConfig: DayConfig;
  readonly #instant: Timeline<AirState, AirInput>;
  readonly #day: Timeline<DayState, AirCell>;
  readonly #heard: ReadonlySet<string>;
  readonly #saved = new Set<string>();
  readonly #about: string;

  constructor(archive: Archive, now: number) {
    this.#archive = archive;
    const gases = airChannels(archive);
    this.#config = airConfig(archive, gases);
    this.#dayConfig = dayConfig(archive, gases);
    this.#about = aboutOf(this.#config, this.#dayConfig);
    const heard = heardOf(this.#dayConfig);
    this.#heard = new Set(heard.map(({ id }) => id));
    this.#instant = new Timeline<AirState, AirInput>(
      {
        start: () => startAir(this.#config),
        step: (state, input) => stepAir(this.#config, state, input),
        inputs: (after, upTo) => merge(readingsOf(archive, gases, after, upTo), [], after, upTo),
      },
      now - LOOK_BACK_MS,
    );
    // On the whole minute, where the buckets of the rolling windows are: live and judged again they are the same.
    const startAt = Math.floor((now - DAY_MS) / 60_000) * 60_000;
    this.#day = new Timeline<DayState, AirCell>(
      {
        start: () => startDay(this.#dayConfig, startAt),
        step: (state, cell) => stepDay(this.#dayConfig, state, cell),
        inputs: (after, upTo) =>
          airCells(readingsOf(archive, heard, after, upTo), after, upTo, tagsOf(archive)),
      },
      startAt,
    );
  }

  /** After a change of the set-up: itself when the change does not touch the air, since a fresh start costs much. */
  renewed(now: number): AirWatch {
    const gases = airChannels(this.#archive);
    const about = aboutOf(airConfig(this.#archive, gases), dayConfig(this.#archive, gases));
    return about === this.#about ? this : new AirWatch(this.#archive, now);
  }

  /** A reading that came after its instant had been judged; older than the look-back changes nothing now. */
  learned(reading: ChannelReading): void {
    if (!this.#heard.has(reading.channel)) return;
    if (reading.at > this.#instant.at - LOOK_BACK_MS) this.#instant.rewindBefore(reading.at);
    if (reading.at > this.#day.at - DAY_MS) this.#day.rewindBefore(reading.at);
  }

  findings(now: number): readonly Finding[] {
    this.#instant.forgetBefore(now - LOOK_BACK_MS);
    this.#instant.advance(now);
    return [
      ...airFindings(this.#config, this.#instant.state),
      ...dayFindings(this.#dayConfig, this.#advanceDay(now)),
    ];
  }

  /** What the page about the air shows. */
  view(now: number): { readonly config: DayConfig; readonly instant: AirState; readonly state: DayState } {
    this.#instant.advance(now);
    return { config: this.#dayConfig, instant: this.#instant.state, state: this.#advanceDay(now) };
  }

  #advanceDay(now: number): DayState {
    this.#day.forgetBefore(now - DAY_MS);
    const edge = cellEdge(now - ARRIVAL_MS);
    const state = edge - this.#day.at >= CELL_MS ? this.#day.advance(edge) : this.#day.state;
    this.#keepMeasurements(state, now);
    return state;
  }

  /** A fall that was followed to its end is kept for good, once; judged again it replaces itself. */
  #keepMeasurements(state: DayState, now: number): void {
    for (const result of dayDecays(state)) {
      const { channel, from, to, fit } = result;
      const key = `${channel} ${from} ${to} ${fit.airChangesPerHour}`;
      if (this.#saved.has(key)) continue;
      this.#saved.add(key);
      this.#archive.saveAirChange(result, now);
    }
  }
}

function aboutOf(...configs: readonly object[]): string {
  return JSON.stringify(configs);
}

/** The tags by instant, read once for all the cells of a stretch. */
function tagsOf(archive: Archive): (at: number) => readonly string[] | null {
  const said = archive.airTags();
  return (at) => said.findLast((each) => each.at <= at)?.tags ?? null;
}
