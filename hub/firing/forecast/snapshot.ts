import type { Forecaster } from '../../physics/forecast/forecaster.ts';
import {
  FARTHEST_SECONDS,
  type OutlookPoint,
  outlook,
  type Quantity,
} from '../../physics/forecast/outlook.ts';
import { type Chamber, chamberOf } from '../load/chamber.ts';
import type { LoadTrack } from '../load/load.ts';
import { longRate, shortRate } from '../rates.ts';
import type { FiringCase, FiringState } from '../types.ts';

/**
 * What forecasts are made from, taken every few seconds. The wall asks every second, and an outlook costs as much as
 * twenty readings: whoever asks between gets the same answer, live and in a replay.
 */
export interface Snapshot {
  /** Epoch ms. */
  readonly at: number;
  readonly index: number;
  readonly forecasters: readonly (Forecaster | null)[];
  readonly load: LoadTrack | null;
  /** The chamber, and how fast the coldest channel changes, °C per second; null: not known. */
  readonly chamber: Chamber | null;
  readonly perSecond: number | null;
}

export const NO_SNAPSHOT: Snapshot = {
  at: Number.NEGATIVE_INFINITY,
  index: -1,
  forecasters: [],
  load: null,
  chamber: null,
  perSecond: null,
};

const EVERY_MS = 10_000;
/** A core is slow, and to follow it to its arrival costs ten outlooks. */
const EVERY_WITH_CORE_MS = 30_000;

/** Takes a snapshot when the last one is old, or of another segment. */
export function takeSnapshot(c: FiringCase, state: FiringState): FiringState {
  const { at, index } = state.snapshot;
  if (state.index === index && state.at - at < (state.load === null ? EVERY_MS : EVERY_WITH_CORE_MS))
    return state;
  const { forecasters, load } = state;
  const startedAt = state.segments[state.index]?.startedAt ?? null;
  const long = startedAt === null ? null : longRate(state.longWindow, startedAt);
  const perSecond = long ?? shortRate(state.coldestWindow);
  const chamber = chamberOf(c, state);
  return {
    ...state,
    snapshot: { at: state.at, index: state.index, forecasters, load, chamber, perSecond },
  };
}

type Outlooks = Partial<Record<Quantity, readonly OutlookPoint[]>>;
const remembered = new WeakMap<Forecaster, Outlooks>();

/** The outlook of a forecaster, worked out once. */
export function outlookOf(forecaster: Forecaster, quantity: Quantity): readonly OutlookPoint[] {
  const found = remembered.get(forecaster) ?? {};
  const known = found[quantity];
  if (known !== undefined) return known;
  const made = outlook(forecaster, FARTHEST_SECONDS, { quantity });
  remembered.set(forecaster, { ...found, [quantity]: made });
  return made;
}
