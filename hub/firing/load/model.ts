import type { ChainState } from '../../physics/heat/chain.ts';
import { COLDEST_CELSIUS, HOTTEST_CELSIUS } from '../../physics/heat/exposure.ts';
import { type PieceState, startPiece, stepPiece } from '../../physics/heat/piece.ts';
import type { Meeting, Meetings } from './place.ts';
import type { LoadBody } from './steel-body.ts';

/**
 * One piece under three assumptions: the likely one, and the ones that leave it coldest and hottest. What is kept
 * is arrays of node temperatures: plain data, for states that are kept and stepped again from.
 */
export interface PieceTrack {
  readonly value: ChainState;
  readonly low: ChainState;
  readonly high: ChainState;
}

export const SIDES = ['value', 'low', 'high'] as const;
export type Side = (typeof SIDES)[number];

/** Chamber temperatures at both ends of a step, °C. */
export interface Air {
  readonly were: number;
  readonly are: number;
}

const inRange = (celsius: number): number => Math.min(HOTTEST_CELSIUS, Math.max(COLDEST_CELSIUS, celsius));

/** A piece equally hot throughout under each assumption, °C. */
export function startTrack(body: LoadBody, start: Readonly<Record<Side, number>>): PieceTrack {
  const at = (side: Side): ChainState => chainOf(startPiece(body.body, inRange(start[side])));
  return { value: at('value'), low: at('low'), high: at('high') };
}

/** Carries a piece through `seconds` under each assumption. */
export function stepTrack(
  body: LoadBody,
  track: PieceTrack,
  seconds: number,
  how: { readonly meetings: Meetings; readonly air: Readonly<Record<Side, Air>> },
): PieceTrack {
  const step = (side: Side): ChainState =>
    chainOf(
      stepPiece(pieceOf(body, track[side]), { seconds, ...exposureOf(how.meetings[side], how.air[side]) }),
    );
  return { value: step('value'), low: step('low'), high: step('high') };
}

function exposureOf({ emissivity, film, celsius }: Meeting, { were, are }: Air) {
  return {
    emissivity,
    film,
    surroundingsCelsius: inRange(celsius ?? are),
    surroundingsWereCelsius: inRange(celsius ?? were),
  };
}

/**
 * Draws a piece to what a thermocouple on it measures: every node moves by `share` of what the surface is off.
 * An observer of the simplest kind (Luenberger 1964, one gain for all nodes): exact where the piece is equally hot
 * and wrong by a share of the lag where it is not, which the next steps mend.
 */
export function nudged(body: LoadBody, track: PieceTrack, measured: number, share: number): PieceTrack {
  const pull = (side: Side): ChainState => {
    const chain = track[side];
    const by = share * (measured - (chain.celsius.at(-1) ?? measured));
    const celsius = chain.celsius.map((node) => inRange(node + by));
    const { material } = body.body.piece;
    const enthalpyJKg = celsius.map((node, i) => material.enthalpy(node, chain.austenite[i] ?? 0));
    return { celsius, enthalpyJKg, austenite: chain.austenite };
  };
  return { value: pull('value'), low: pull('low'), high: pull('high') };
}

/** A chain made whole again, for the stepper and for questions about it. */
export function pieceOf({ body }: LoadBody, chain: ChainState): PieceState {
  const { celsius } = chain;
  let sum = 0;
  for (const [i, mass] of body.chain.massKg.entries()) sum += mass * (celsius[i] ?? 0);
  return {
    ...chain,
    body,
    elapsedSeconds: 0,
    heatInJKg: 0,
    coreCelsius: coreOf(chain),
    surfaceCelsius: surfaceOf(chain),
    meanCelsius: sum / body.massKg,
  };
}

function chainOf({ celsius, enthalpyJKg, austenite }: PieceState): ChainState {
  return { celsius, enthalpyJKg, austenite };
}

export function coreOf(chain: ChainState): number {
  return chain.celsius[0] ?? Number.NaN;
}

export function surfaceOf(chain: ChainState): number {
  return chain.celsius.at(-1) ?? Number.NaN;
}
