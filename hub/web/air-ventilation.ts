import type { DayConfig, DayState } from '../air/day-types.ts';
import type { Archive } from '../archive/types.ts';
import type { AirChange, AirView } from '../contract/air.ts';
import { PhysicsError } from '../physics/errors.ts';
import { highestSourceCubicMetresPerHour, secondsUntilBelow } from '../physics/ventilation/air-changes.ts';
import type { Frozen } from './routes/compute/computation.ts';

/** The measured air changes, and what follows from them for this room as it stands. */

/** A screen shows a season at most. */
const MOST_HISTORY = 100;
/** Real rooms mix badly: the low end of the common habit. A sensor that is mixed by chance reads 1. */
const POOR_MIXING = 3;
const SLOWEST_PER_HOUR = 0.01;

interface Known {
  readonly archive: Archive;
  readonly config: DayConfig;
  readonly state: DayState;
  /** Highest fresh level of carbon monoxide, ppm; null: nobody knows. */
  readonly highestPpm: number | null;
}

export function ventilationView(known: Known): Frozen<AirView['ventilation']> {
  const { archive, config, state } = known;
  const said = archive.airTags();
  const present = said.at(-1) ?? null;
  const history = archive.airChanges(MOST_HISTORY);
  const measured = history.find((change) => counts(change, present?.tags ?? null)) ?? null;
  return {
    tags: present?.tags ?? null,
    tagsSince: present?.at ?? null,
    knownTags: [...new Set(said.flatMap(({ tags }) => tags))].sort((a, b) => a.localeCompare(b)),
    history,
    measured,
    limitPpm: config.profile.twa?.ppm ?? null,
    secondsUntilBelow: measured === null ? null : waitOf(known, measured),
    highestSourceCubicMetresPerHour: measured === null ? null : sourceOf(known, measured),
    following: Object.values(state.decays).some(({ fall }) => fall !== null),
  };
}

/** A fall whose conditions broke tells nothing; one under other doors tells nothing about these. */
function counts({ fit, tags }: AirChange, present: readonly string[] | null): boolean {
  return fit.conditionsHeld !== false && sameTags(tags, present);
}

function sameTags(a: readonly string[] | null, b: readonly string[] | null): boolean {
  if (a === null || b === null) return a === b;
  return a.length === b.length && a.every((tag) => b.includes(tag));
}

function backgroundPpm({ config, state }: Known, { gas, backgroundPpm: own }: AirChange): number {
  if (gas === 'carbon-monoxide') return own;
  const seen = config.channels.map(({ id, gas: other }) =>
    other === 'carbon-monoxide' ? (state.decays[id]?.background ?? 0) : 0,
  );
  return Math.max(0, ...seen);
}

/** Only while nothing burns: with the source going nobody can say when the level will be down. */
function waitOf(known: Known, change: AirChange): Frozen<AirView['ventilation']>['secondsUntilBelow'] {
  const limitPpm = known.config.profile.twa?.ppm;
  const ppmNow = known.highestPpm;
  if (limitPpm === undefined || ppmNow === null || known.state.fire.outSince === null) return null;
  const wait = (airChangesPerHour: number, mixingFactor: number) =>
    secondsUntilBelow({
      ppmNow,
      limitPpm,
      backgroundPpm: backgroundPpm(known, change),
      airChangesPerHour,
      mixingFactor,
    });
  const { low, airChangesPerHour, high } = change.fit;
  return orNull(() => ({
    low: wait(high, 1),
    value: wait(airChangesPerHour, 1),
    high: low > SLOWEST_PER_HOUR ? wait(low, POOR_MIXING) : null,
  }));
}

function sourceOf(
  known: Known,
  change: AirChange,
): Frozen<AirView['ventilation']>['highestSourceCubicMetresPerHour'] {
  const limitPpm = known.config.profile.twa?.ppm;
  const volumeCubicMetres = known.archive.shop().settings.roomCubicMetres;
  if (limitPpm === undefined || volumeCubicMetres === null) return null;
  const source = (airChangesPerHour: number, mixingFactor: number) =>
    highestSourceCubicMetresPerHour({
      volumeCubicMetres,
      airChangesPerHour: Math.max(0, airChangesPerHour),
      limitPpm,
      backgroundPpm: backgroundPpm(known, change),
      mixingFactor,
    });
  const { low, airChangesPerHour, high } = change.fit;
  return orNull(() => ({
    low: source(low, POOR_MIXING),
    value: source(airChangesPerHour, POOR_MIXING),
    high: source(high, 1),
  }));
}

/** A background at or above the limit has no answer: the room cannot get there by airing. */
function orNull<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}
