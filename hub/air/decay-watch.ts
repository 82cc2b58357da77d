import { PhysicsError } from '../physics/errors.ts';
import { type DecayFit, fitDecay, type GasSample } from '../physics/ventilation/decay.ts';
import type { AirCell } from './cell.ts';
import type { DayChannel } from './day-types.ts';
import type { FireState } from './fire.ts';

/**
 * Ventilation measured by the way: when the last flame has gone out and a gas falls, its fall tells how much air the
 * room changes. Nobody is ever asked to raise a gas for it. One fall is one measurement, for the openings of that
 * hour; it ends with the fall, or where somebody lights, opens or shuts.
 */

interface Gas {
  /** Smallest excess over the background that is worth following, and the step of usual sensors, ppm. */
  readonly leastExcess: number;
  readonly step: number;
  /** Of air from outside, until the shop's own is seen before anything is lit: 420 ppm of CO2, published widely. */
  readonly outdoorPpm: number;
}

/** Common practice, no source. */
const GASES: Readonly<Partial<Record<DayChannel['gas'], Gas>>> = {
  'carbon-monoxide': { leastExcess: 15, step: 1, outdoorPpm: 0 },
  'carbon-dioxide': { leastExcess: 300, step: 20, outdoorPpm: 420 },
};
/** The room is given time to mix before the fall is believed. */
const MIXING_MS = 120_000;
const SAMPLE_MS = 30_000;
const LONGEST_MS = 2 * 3_600_000;
const SILENT_MS = 120_000;
/** Two stretches of this length that differ by no more than a step: the fall has arrived. */
const PLATEAU_MS = 300_000;
/**
 * Beyond this the noise of a fall that hardly moves would be taken for its rest. Derived here: six air changes an
 * hour; below that whether the background stood still stays unknown.
 */
const MOST_REST_SHARE = 1.5;
/** A background is no single reading. Common practice, no source. */
const BACKGROUND_MS = 300_000;
const LEAST_OTHER_SAMPLES = 5;

export type DecayEnd = 'arrived' | 'lit' | 'changed' | 'silent' | 'long';

/** One fall that was followed to its end. Instants in epoch ms. */
export interface DecayResult {
  readonly channel: string;
  readonly gas: DayChannel['gas'];
  readonly from: number;
  readonly to: number;
  readonly end: DecayEnd;
  readonly tags: readonly string[] | null;
  readonly backgroundPpm: number;
  readonly fit: DecayFit;
}

interface Fall {
  readonly from: number;
  readonly tags: readonly string[] | null;
  readonly samples: readonly GasSample[];
}

export interface DecayState {
  /** Level of the air before anything was lit, ppm; null: never seen. */
  readonly background: number | null;
  readonly fall: Fall | null;
  readonly seenAt: number;
  /** What the last fall was made of: another sensor may still follow the same one. */
  readonly past: readonly GasSample[];
  /** The last fall that could be fitted. */
  readonly last: DecayResult | null;
}

export const NO_DECAY: DecayState = { background: null, fall: null, seenAt: 0, past: [], last: null };

interface Beside {
  readonly fire: FireState;
  readonly cell: AirCell;
  /** What fell at the other sensors of this gas. */
  readonly others: readonly (readonly GasSample[])[];
}

/** The next state. Pure. */
export function stepDecay(old: DecayState, channel: DayChannel, beside: Beside): DecayState {
  const gas = GASES[channel.gas];
  if (gas === undefined) return old;
  const { fire, cell } = beside;
  const ppm = cell.values[channel.id]?.mean ?? null;
  const seenAt = ppm === null ? old.seenAt : cell.to;
  const state = { ...old, seenAt };
  if (state.fall !== null) return follow(state, state.fall, channel, gas, { ...beside, ppm });
  if (fire.outSince === null || ppm === null) return state;
  const excess = ppm - (old.background ?? gas.outdoorPpm);
  if (excess < gas.leastExcess) return { ...state, background: calm(old.background, ppm, cell) };
  if (cell.to - fire.outSince < MIXING_MS) return state;
  return { ...state, fall: begin(cell, ppm) };
}

/** The level of a shop where nothing burns, smoothed over minutes. */
function calm(old: number | null, ppm: number, { from, to }: AirCell): number {
  const share = 1 - Math.exp((from - to) / BACKGROUND_MS);
  return Math.max(0, old === null ? ppm : old + (ppm - old) * share);
}

function begin(cell: AirCell, ppm: number): Fall {
  return { from: cell.to, tags: cell.tags, samples: [{ atMs: cell.to, ppm }] };
}

function follow(
  state: DecayState,
  fall: Fall,
  channel: DayChannel,
  gas: Gas,
  beside: Beside & { readonly ppm: number | null },
): DecayState {
  const { cell, ppm } = beside;
  const end = endOf(state, fall, gas, beside);
  if (end !== null) return finish(state, fall, channel, gas, { ...beside, end });
  const last = fall.samples.at(-1);
  if (ppm === null || (last !== undefined && cell.to - last.atMs < SAMPLE_MS)) return state;
  // Higher than where it began: the source was not off yet.
  if (ppm > (fall.samples[0]?.ppm ?? 0) + gas.step) return { ...state, fall: begin(cell, ppm) };
  return { ...state, fall: { ...fall, samples: [...fall.samples, { atMs: cell.to, ppm }] } };
}

function endOf(state: DecayState, fall: Fall, gas: Gas, { fire, cell }: Beside): DecayEnd | null {
  if (fire.outSince === null) return 'lit';
  if (String(cell.tags) !== String(fall.tags)) return 'changed';
  if (cell.to - state.seenAt > SILENT_MS) return 'silent';
  if (cell.to - fall.from >= LONGEST_MS) return 'long';
  return plateau(fall.samples, gas) === null ? null : 'arrived';
}

interface Plateau {
  readonly ppm: number;
  /** From the stretch before, ppm. */
  readonly fell: number;
}

/** The level of the last stretch, when it hardly differs from the one before; null while the gas still falls. */
function plateau(samples: readonly GasSample[], { step }: Gas): Plateau | null {
  const last = samples.at(-1);
  if (last === undefined) return null;
  const between = (from: number, to: number) =>
    samples.filter(({ atMs }) => last.atMs - atMs >= from && last.atMs - atMs < to).map(({ ppm }) => ppm);
  const [late, early] = [between(0, PLATEAU_MS), between(PLATEAU_MS, 2 * PLATEAU_MS)];
  if (late.length < 3 || early.length < 3) return null;
  const [now, before] = [mean(late), mean(early)];
  return Math.abs(before - now) < step / 2 ? { ppm: now, fell: before - now } : null;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

interface Ending extends Beside {
  readonly end: DecayEnd;
}

function finish(state: DecayState, fall: Fall, channel: DayChannel, gas: Gas, beside: Ending): DecayState {
  const { cell, end, others } = beside;
  const { from, tags, samples } = fall;
  const question = {
    backgroundPpm: state.background ?? gas.outdoorPpm,
    samples,
    resolutionPpm: gas.step,
    // People breathe out carbon dioxide: whether they have left, nobody measured.
    ...(channel.gas === 'carbon-monoxide' ? { sourceOff: true } : {}),
    // Somebody says how the shop stands, and says when it changes; where nobody does, nobody knows.
    ...(tags === null ? {} : { openingsUnchanged: true }),
  };
  const rough = fitOf(question);
  const after = end === 'arrived' && rough !== null ? restingPpm(samples, gas, rough) : null;
  const over = { ...state, fall: null, past: samples, background: after ?? state.background };
  if (rough === null || rough.airChangesPerHour <= 0) return over;
  const known = after === null ? question : { ...question, backgroundAfterPpm: after };
  const otherPoints = others
    .map((other) => other.filter(({ atMs }) => atMs >= from))
    .filter((other) => other.length >= LEAST_OTHER_SAMPLES);
  const fit = fitOf({ ...known, otherPoints }) ?? fitOf(known) ?? rough;
  const about = { channel: channel.id, gas: channel.gas, from, to: cell.to, end, tags };
  return { ...over, last: { ...about, backgroundPpm: question.backgroundPpm, fit } };
}

/**
 * Where the fall will come to rest, ppm: what an exponential that fell by `fell` in the last stretch still has to
 * fall. A slow fall is nowhere near its rest when it hardly moves any more: then nobody knows.
 */
function restingPpm(samples: readonly GasSample[], gas: Gas, fit: DecayFit): number | null {
  const rest = plateau(samples, gas);
  if (rest === null) return null;
  const kept = Math.exp((-fit.airChangesPerHour * PLATEAU_MS) / 3_600_000);
  const share = kept / (1 - kept);
  return share > MOST_REST_SHARE ? null : Math.max(0, rest.ppm - rest.fell * share);
}

/** Too short a fall is no fault of anybody's: there is just no measurement. */
function fitOf(question: Parameters<typeof fitDecay>[0]): DecayFit | null {
  try {
    return fitDecay(question);
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}
