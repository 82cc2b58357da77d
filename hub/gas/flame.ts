import type { FurnaceGas } from '../contract/gas.ts';
import { FLAME_PASCALS, flowOf } from './flow.ts';
import type { GasSample } from './types.ts';

/**
 * Flame-out, suspected: pressure is there, and the chamber cools faster than it can while burning.
 *
 * While it burns with a share r of the flow of before, a chamber loses at most the share 1 - r of what it loses with
 * no flame at all. Without a flame a small forge loses about a tenth of its excess over the room a minute. Both are
 * derived here from the heat balance of a small forge; no real forge was measured, so this is a suspicion.
 */

/** The fall is looked at over this long, ms. */
const FALL_MS = 120_000;
/** The flow of before is the mean of this stretch before the fall, ms. */
const BEFORE_MS = 180_000;
const UNLIT_SHARE_PER_MINUTE = 0.1;
/** A burning chamber wavers by less than this share of its excess in two minutes, and by less than this. */
const WAVER_SHARE = 0.04;
const WAVER_KELVIN = 25;
/** No chamber loses this share within ten seconds: that is a probe that jumped. */
const JUMP_SHARE = 0.06;
const ROOM_CELSIUS = 20;
/** It burns again when the chamber rises by this within the last minute. */
const RISE_KELVIN = 4;

export interface FlameLook {
  /** null: cannot be told. */
  readonly out: boolean | null;
  readonly fallKelvin: number;
  readonly chamberCelsius: number | null;
  readonly outletPascals: number | null;
}

/**
 * Looks at the last five minutes.
 *
 * @param was whether it is suspected already: then it holds while the pressure stands and the chamber does not rise
 * @param flows by the scale: false where nothing flows, so that a hose stands under pressure behind a shut burner
 */
export function flameLook(
  gas: FurnaceGas,
  samples: readonly GasSample[],
  { was, hotAbove, flows }: { was: boolean; hotAbove: number; flows: boolean | null },
): FlameLook {
  const now = samples.at(-1);
  const chamber = now?.chamberCelsius ?? null;
  const outlet = now?.outletPascals ?? null;
  const look = (out: boolean | null, fallKelvin = 0): FlameLook => {
    return { out, fallKelvin, chamberCelsius: chamber, outletPascals: outlet };
  };
  if (now === undefined || chamber === null || outlet === null) return look(null);
  if (outlet < FLAME_PASCALS || flows === false) return look(false);
  const recent = samples.filter(({ atMs }) => atMs >= now.atMs - FALL_MS);
  const then = recent.find(({ chamberCelsius }) => chamberCelsius !== null)?.chamberCelsius ?? null;
  if (then === null) return look(null);
  const fall = then - chamber;
  if (was) return look(!rises(recent, chamber, now.atMs), fall);
  if (then < hotAbove * 1.5 || recent.length < 8) return look(false, fall);
  const excess = then - ROOM_CELSIUS;
  const share = Math.min(1, shareOfFlow(gas, samples, now));
  const most = excess * (UNLIT_SHARE_PER_MINUTE * 2 * (1 - share) + WAVER_SHARE);
  return look(fall > Math.max(WAVER_KELVIN, most) && falls(recent) && !jumps(recent, excess), fall);
}

function rises(recent: readonly GasSample[], chamber: number, nowMs: number): boolean {
  const minute = recent.filter(
    ({ atMs, chamberCelsius }) => atMs >= nowMs - 60_000 && chamberCelsius !== null,
  );
  const lowest = Math.min(...minute.map(({ chamberCelsius }) => chamberCelsius ?? Number.POSITIVE_INFINITY));
  return chamber - lowest > RISE_KELVIN;
}

/** Steps of a probe at rest, K. Common practice, no source. */
const NOISE = 1;

/** Falling for a whole minute and still: a door that was open for a moment, or cold steel laid in, recovers. */
function falls(recent: readonly GasSample[]): boolean {
  const seen = recent.slice(-7).flatMap(({ chamberCelsius }) => chamberCelsius ?? []);
  if (seen.length < 6) return false;
  const middle = Math.floor(seen.length / 2);
  const isDown = (celsius: number, i: number): boolean =>
    i === 0 || celsius < (seen[i - 1] ?? celsius) + NOISE;
  const [first = 0, half = 0, last = 0] = [seen[0], seen[middle], seen.at(-1)];
  return seen.every(isDown) && half < first - NOISE && last < half - NOISE;
}

function jumps(recent: readonly GasSample[], excess: number): boolean {
  return recent.some((sample, i) => {
    const [was, is] = [recent[i - 1]?.chamberCelsius ?? null, sample.chamberCelsius];
    return was !== null && is !== null && was - is > excess * JUMP_SHARE;
  });
}

/** Flow over the fall against the flow of before; 1 where nothing flowed before, since then nothing was turned down. */
function shareOfFlow(gas: FurnaceGas, samples: readonly GasSample[], now: GasSample): number {
  const mean = (from: number, to: number): number => {
    const flows = samples.flatMap(({ atMs, outletPascals }) =>
      atMs >= from && atMs < to && outletPascals !== null ? [flowOf(gas, outletPascals)] : [],
    );
    return flows.length === 0 ? 0 : flows.reduce((a, b) => a + b, 0) / flows.length;
  };
  const before = mean(now.atMs - FALL_MS - BEFORE_MS, now.atMs - FALL_MS);
  return before === 0 ? 1 : mean(now.atMs - FALL_MS, now.atMs + 1) / before;
}
