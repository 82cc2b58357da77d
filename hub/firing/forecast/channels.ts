import type { ChannelReading } from '../../contract/reading.ts';
import type { ChannelRole } from '../../contract/shop.ts';
import { type Forecaster, observe, startForecaster } from '../../physics/forecast/forecaster.ts';
import { CHAMBER_PROBE, LOAD_PROBE, type ProbeTraits } from '../../physics/forecast/furnace-model.ts';
import type { FiringCase, FiringState } from '../types.ts';

/** One forecaster for each watched channel, carried in the state. */

/** A node that speaks faster tells no more of what comes, and costs as much again: every second reading of 1 Hz. */
const SPACING_MS = 1500;
/** What the estimator takes, °C: a value outside is no temperature of a furnace. */
const LIKELY = { low: -200, high: 2000 } as const;

function traitsOf(role: ChannelRole): ProbeTraits {
  return role === 'load' ? LOAD_PROBE : CHAMBER_PROBE;
}

/** Takes a good reading of the watched channel in `place` in. */
export function foresee(
  c: FiringCase,
  state: FiringState,
  place: number,
  reading: ChannelReading,
): readonly (Forecaster | null)[] {
  const channel = c.watched[place];
  const before = state.forecasters[place] ?? null;
  const { at: atMs, value: celsius } = reading;
  if (channel === undefined || celsius < LIKELY.low || celsius > LIKELY.high) return state.forecasters;
  if (before !== null && atMs - before.atMs < SPACING_MS) return state.forecasters;
  const taken = { atMs, celsius };
  const next = before === null ? startForecaster(traitsOf(channel.role), taken) : observe(before, taken);
  return state.forecasters.map((old, i) => (i === place ? next : old));
}
