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
}

/** Common practice, no source. */
const GASES: Readonly<Partial<Record<DayChannel['gas'], Gas>>> = {
  'carbon-monoxide': { leastExcess: 15, step: 1 },
  'carbon-dioxide': { leastExcess: 300, step: 20 },
};
/** The room is given time to mix before the fall is believed. */
const MIXING_MS = 120_000;
const SAMPLE_MS = 30_000;
const LONGEST_MS = 2 * 3_600_000;
const SILENT_MS = 120_000;
/** Two stretches of this length that differ by no more than a step: the fall has arrived. */
const PLATEAU_MS = 300_000;

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
  /** The last fall that could be fitted. */
  readonly last: DecayResult | null;
}

export const NO_DECAY: DecayState = { background: null, fall: null, seenAt: 0, last: null };

interface Beside {
  readonly fire: FireState;
  readonly cell: AirCell;
  /** The same fall at the other sensors of this gas. */
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
  const excess = ppm - (old.background ?? 0);
  if (excess < gas.leastExcess) return { ...state, background: Math.max(0, ppm) };
  if (cell.to - fire.outSince < MIXING_MS) return state;
  return { ...state, fall: begin(cell, ppm) };
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

/** The level that a fall has come to rest at, ppm; null while it still falls. */
function plateau(samples: readonly GasSample[], { step }: Gas): number | null {
  const last = samples.at(-1);
  if (last === undefined) return null;
  const between = (from: number, to: number) =>
    samples.filter(({ atMs }) => last.atMs - atMs >= from && last.atMs - atMs < to).map(({ ppm }) => ppm);
  const [late, early] = [between(0, PLATEAU_MS), between(PLATEAU_MS, 2 * PLATEAU_MS)];
  if (late.length < 3 || early.length < 3) return null;
  const [now, before] = [mean(late), mean(early)];
  return Math.abs(before - now) < step / 2 ? now : null;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function finish(
  state: DecayState,
  fall: Fall,
  channel: DayChannel,
  gas: Gas,
  { cell, end, others }: Beside & { readonly end: DecayEnd },
): DecayState {
  const after = end === 'arrived' ? plateau(fall.samples, gas) : null;
  const background = state.background ?? after;
  const over = { ...state, fall: null, background: after ?? state.background };
  if (background === null) return over;
  const question = {
    backgroundPpm: Math.max(0, background),
    ...(after === null ? {} : { backgroundAfterPpm: Math.max(0, after) }),
    samples: fall.samples,
    resolutionPpm: gas.step,
    // People breathe out carbon dioxide: whether they have left, nobody measured.
    ...(channel.gas === 'carbon-monoxide' ? { sourceOff: true } : {}),
    // Somebody says how the shop stands, and says when it changes; where nobody does, nobody knows.
    ...(fall.tags === null ? {} : { openingsUnchanged: true }),
  };
  const fit = fitOf({ ...question, otherPoints: others }) ?? fitOf(question);
  if (fit === null || fit.airChangesPerHour <= 0) return over;
  const { from, tags } = fall;
  const about = { channel: channel.id, gas: channel.gas, from, to: cell.to, end, tags };
  return { ...over, last: { ...about, backgroundPpm: question.backgroundPpm, fit } };
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
