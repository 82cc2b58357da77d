import { airCells, CELL_MS, cellEdge } from '../air/cell.ts';
import type { Archive } from '../archive/types.ts';
import type { Finding } from '../contract/alarm.ts';
import { MOST_NOTED_LATE_MS } from '../contract/gas.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { afterClosing, wallClock } from '../gas/closing.ts';
import { startCount } from '../gas/contents.ts';
import { gasFindings } from '../gas/findings.ts';
import { startGas, stepGas } from '../gas/judge.ts';
import type { GasCell, GasConfig, GasState } from '../gas/types.ts';
import { gasConfig, gasHeard, SHOP_SUPPLY } from './gas-config.ts';
import { firingSpans, firingsAt, type JudgementOf } from './gas-firings.ts';
import { GasUse } from './gas-used.ts';
import { readingsOf } from './shop-inputs.ts';
import { Timeline } from './timeline.ts';

/** How far back the judge goes: a change of cylinders may be noted so late, and a reading may come so late. */
const LOOK_BACK_MS = MOST_NOTED_LATE_MS;
/** A reading is given this long to arrive before its cell is judged; a later one takes the judge back. */
const ARRIVAL_MS = 2_000;
/** A count is kept once an hour, so that a start counts on from it. */
const KEEP_MS = 3_600_000;
/** More fills than this within the look-back are not to be expected. */
const MOST_CHANGES = 50;

/**
 * Carries the judge of the gas in cells of ten seconds. It starts four to five hours back, where an hourly count
 * stands: 1440 to 1800 cells, 0.9 to 1.6 s of processor time for one furnace that burned all the while, with three
 * channels at one reading a second (busy two-core server); after that some 8 ms every half minute. Nothing is done in
 * a shop where nobody has entered a burner.
 */
export class GasWatch {
  readonly #archive: Archive;
  readonly #judgementOf: JudgementOf;
  readonly #config: GasConfig;
  readonly #about: string;
  readonly #heard: ReadonlySet<string>;
  readonly #timeline: Timeline<GasState, GasCell>;
  readonly #use: GasUse;
  #keptAt: number;

  constructor(archive: Archive, now: number, judgementOf: JudgementOf) {
    this.#archive = archive;
    this.#judgementOf = judgementOf;
    this.#config = gasConfig(archive);
    this.#about = aboutOf(archive, this.#config);
    this.#use = new GasUse(archive, this.#config);
    const heard = gasHeard(this.#config);
    this.#heard = new Set(heard.map(({ id }) => id));
    const startAt = this.#startAt(now);
    this.#keptAt = startAt;
    this.#timeline = new Timeline<GasState, GasCell>(
      {
        start: () => startGas(this.#config, startAt, this.#countsAt(startAt)),
        step: (state, cell) => stepGas(this.#config, state, cell),
        inputs: (after, upTo) => this.#cells(after, upTo),
      },
      startAt,
    );
  }

  /** After a change of the set-up: itself when the change does not touch the gas, since a fresh start costs much. */
  renewed(now: number): GasWatch {
    const about = aboutOf(this.#archive, gasConfig(this.#archive));
    return about === this.#about ? this : new GasWatch(this.#archive, now, this.#judgementOf);
  }

  /** A reading that came after its instant had been judged; older than the look-back changes nothing now. */
  learned(reading: ChannelReading): void {
    if (!this.#heard.has(reading.channel)) return;
    this.#use.learned(reading);
    if (reading.at <= this.#timeline.at - LOOK_BACK_MS) return;
    this.#timeline.rewindBefore(reading.at);
  }

  /** A fill was noted or taken back, for that instant. */
  changed(at: number): void {
    this.#timeline.rewindBefore(at);
    this.#keptAt = Math.min(this.#keptAt, at);
  }

  findings(now: number): readonly Finding[] {
    if (this.#config.supplies.length === 0) return [];
    return gasFindings(this.#config, this.#advance(now));
  }

  /** What the page about the gas shows, and what firings burned. */
  view(now: number): { readonly config: GasConfig; readonly state: GasState; readonly use: GasUse } {
    return { config: this.#config, state: this.#advance(now), use: this.#use };
  }

  #advance(now: number): GasState {
    const edge = cellEdge(now - ARRIVAL_MS);
    if (edge - this.#timeline.at < CELL_MS) return this.#timeline.state;
    this.#timeline.forgetBefore(now - LOOK_BACK_MS - KEEP_MS);
    const state = this.#timeline.advance(edge);
    if (state.at - this.#keptAt >= KEEP_MS) this.#keep(state);
    return state;
  }

  #keep(state: GasState): void {
    this.#keptAt = state.at;
    for (const { id, byFlow } of state.supplies) {
      if (byFlow !== null) this.#archive.keepGasCount(id, byFlow);
    }
  }

  /** Where a count was kept between four and five hours ago, else four hours ago. */
  #startAt(now: number): number {
    const latest = cellEdge(now - LOOK_BACK_MS);
    const kept = this.#config.supplies.flatMap(({ id }) => this.#archive.gasCount(id, latest)?.atMs ?? []);
    const oldest = Math.min(latest, ...kept);
    return oldest > latest - KEEP_MS - 10 * CELL_MS ? oldest : latest;
  }

  #countsAt(at: number): Parameters<typeof startGas>[2] {
    const changes = this.#archive.gasChanges(MOST_CHANGES);
    const counts = this.#config.supplies.map(({ id }) => {
      const fill = changes.find((change) => change.at <= at && supplyOf(change) === id);
      const count = this.#archive.gasCount(id, at);
      if (count !== null && count.atMs >= (fill?.at ?? 0)) return [id, count] as const;
      return [id, fill === undefined ? null : startCount(fill.at, fill.kilograms)] as const;
    });
    return Object.fromEntries(counts);
  }

  *#cells(after: number, upTo: number): Generator<GasCell> {
    const heard = gasHeard(this.#config);
    const { closingTime, timeZone } = this.#archive.shop().settings;
    const clock = wallClock(timeZone);
    const spans = firingSpans(this.#archive, after, upTo, this.#judgementOf);
    const changes = this.#archive
      .gasChanges(MOST_CHANGES)
      .filter(({ at }) => at > after && at <= upTo)
      .reverse();
    for (const cell of airCells(readingsOf(this.#archive, heard, after, upTo), after, upTo, () => null)) {
      const { from, to, values } = cell;
      const noted = changes.filter(({ at }) => at > from && at <= to);
      yield {
        from,
        to,
        values,
        firings: firingsAt(spans, to),
        fills: noted.map((change) => ({
          at: change.at,
          supply: supplyOf(change),
          kilograms: change.kilograms,
        })),
        afterClosing: afterClosing(closingTime, clock, to),
      };
    }
  }
}

function supplyOf({ furnaceId }: { readonly furnaceId: string | null }): string {
  return furnaceId ?? SHOP_SUPPLY;
}

function aboutOf(archive: Archive, config: GasConfig): string {
  const { closingTime, timeZone } = archive.shop().settings;
  return JSON.stringify([config, closingTime, timeZone]);
}
