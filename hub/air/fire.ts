import type { AirCell } from './cell.ts';
import type { DayConfig, DayFurnace } from './day-types.ts';

/**
 * Which furnaces are hot, and which still burn. Hot is what the chamber says; burning is what the gas says, or
 * where nobody measures the gas, a chamber that does not fall. A furnace that says nothing is neither: unknown.
 */

/** Gas under less than this gauge pressure feeds no flame. Common practice, no source. */
const FLAME_PASCALS = 500;
/** A chamber that lost this much since its highest of the last minutes is going out. Common practice, no source. */
const FALLEN_CELSIUS = 40;
const PEAK_MS = 600_000;
/** How many turns of the strip are kept: a day of lighting and putting out. */
const MOST_TURNS = 200;

export interface FurnaceFire {
  readonly id: string;
  /** Null: not known. */
  readonly hot: boolean | null;
  readonly burning: boolean | null;
  readonly chamberCelsius: number | null;
  readonly chamberAt: number;
  readonly pressurePascals: number | null;
  readonly pressureAt: number;
  readonly peakCelsius: number;
  readonly peakAt: number;
}

/** A stretch in which a furnace was hot, for the strip under the curve. `to` null: it still is. */
export interface HotStretch {
  readonly furnaceId: string;
  readonly from: number;
  readonly to: number | null;
}

export interface FireState {
  readonly furnaces: readonly FurnaceFire[];
  readonly stretches: readonly HotStretch[];
  /** Last instant at which any furnace was hot; null: never seen. */
  readonly lastHotAt: number | null;
  /** Since when every furnace is known to be cold, without a break; null: not now. */
  readonly coldSince: number | null;
  /** Since when nothing that burns fuel burns, known without a break; null: not now. */
  readonly outSince: number | null;
}

export function startFire(config: DayConfig): FireState {
  const furnaces = config.furnaces.map(({ id }) => ({
    id,
    hot: null,
    burning: null,
    chamberCelsius: null,
    chamberAt: 0,
    pressurePascals: null,
    pressureAt: 0,
    peakCelsius: 0,
    peakAt: 0,
  }));
  return { furnaces, stretches: [], lastHotAt: null, coldSince: null, outSince: null };
}

/** The next state. Pure. */
export function stepFire(config: DayConfig, state: FireState, cell: AirCell): FireState {
  const furnaces = state.furnaces.map((old, i) => {
    const furnace = config.furnaces[i];
    return furnace === undefined ? old : stepFurnace(config, furnace, old, cell);
  });
  const anyHot = furnaces.some(({ hot }) => hot === true);
  // No furnace that can be known is no furnace known to be cold.
  const allCold = furnaces.length > 0 && furnaces.every(({ hot }) => hot === false);
  const allOut = furnaces.length > 0 && furnaces.every(({ burning }) => burning === false);
  return {
    furnaces,
    stretches: stretchesAfter(state, furnaces, cell),
    lastHotAt: anyHot ? cell.to : state.lastHotAt,
    coldSince: allCold ? (state.coldSince ?? cell.from) : null,
    outSince: allOut ? (state.outSince ?? cell.from) : null,
  };
}

function stepFurnace(config: DayConfig, furnace: DayFurnace, old: FurnaceFire, cell: AirCell): FurnaceFire {
  const chamber = highest(cell, furnace.chambers);
  const pressure = highest(cell, furnace.pressures);
  const next = {
    ...old,
    ...(chamber === null ? {} : { chamberCelsius: chamber, chamberAt: cell.to }),
    ...(pressure === null ? {} : { pressurePascals: pressure, pressureAt: cell.to }),
  };
  const warmer = next.chamberCelsius !== null && next.chamberCelsius >= old.peakCelsius;
  const peak =
    warmer || cell.to - old.peakAt > PEAK_MS
      ? { peakCelsius: next.chamberCelsius ?? 0, peakAt: cell.to }
      : {};
  const seen = { ...next, ...peak };
  const hot = hotOf(config, furnace, seen, cell.to);
  return { ...seen, hot, burning: burningOf(furnace, seen, hot, cell.to) };
}

function highest(cell: AirCell, channels: DayFurnace['chambers']): number | null {
  const found = channels.flatMap(({ id }) => cell.values[id]?.mean ?? []);
  return found.length === 0 ? null : Math.max(...found);
}

function isFresh(at: number, now: number, channels: DayFurnace['chambers']): boolean {
  const longest = Math.max(0, ...channels.map(({ staleAfterSeconds }) => staleAfterSeconds));
  return at > 0 && now - at <= longest * 1000;
}

function hotOf(config: DayConfig, furnace: DayFurnace, fire: FurnaceFire, now: number): boolean | null {
  if (fire.chamberCelsius === null || !isFresh(fire.chamberAt, now, furnace.chambers)) return null;
  const limit = config.hotAboveCelsius * (fire.hot === true ? 0.9 : 1);
  return fire.chamberCelsius > limit;
}

/** An oven on the mains burns nothing. */
function burningOf(furnace: DayFurnace, fire: FurnaceFire, hot: boolean | null, now: number): boolean | null {
  if (furnace.kind === 'electric-oven') return false;
  if (fire.pressurePascals !== null && isFresh(fire.pressureAt, now, furnace.pressures)) {
    return fire.pressurePascals > FLAME_PASCALS;
  }
  if (hot === null || fire.chamberCelsius === null) return null;
  return hot && fire.peakCelsius - fire.chamberCelsius < FALLEN_CELSIUS;
}

function stretchesAfter(
  state: FireState,
  furnaces: readonly FurnaceFire[],
  cell: AirCell,
): readonly HotStretch[] {
  let stretches = state.stretches;
  for (const [i, { id, hot }] of furnaces.entries()) {
    const was = state.furnaces[i]?.hot === true;
    if (was === (hot === true)) continue;
    stretches = was
      ? stretches.map((each) =>
          each.furnaceId === id && each.to === null ? { ...each, to: cell.from } : each,
        )
      : [...stretches, { furnaceId: id, from: cell.from, to: null }].slice(-MOST_TURNS);
  }
  return stretches;
}
