import {
  type Forecaster,
  observe,
  type ProbeReading,
  startForecaster,
} from '../../../hub/physics/forecast/forecaster.ts';
import { CHAMBER_PROBE, type ProbeTraits } from '../../../hub/physics/forecast/furnace-model.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';

/** A furnace with a known course, read through a first-order probe with noise. */
export interface Course {
  /** True temperature, °C, at a second. */
  readonly truth: (second: number) => number;
  /** What a probe of 8 s settles to show of it, without noise. */
  readonly shown: (second: number) => number;
}

export const constant = (celsius: number): Course => ({ truth: () => celsius, shown: () => celsius });

/** A probe trails a ramp by lag times rate, once the start is forgotten. */
export const ramp = (from: number, perSecond: number, lagSeconds = CHAMBER_PROBE.lagSeconds): Course => ({
  truth: (t) => from + perSecond * t,
  shown: (t) => from + perSecond * (t - lagSeconds * (1 - Math.exp(-t / lagSeconds))),
});

/** A first-order approach to an end temperature; the probe follows with the closed solution for two lags in a row. */
export function approach(from: number, to: number, tau: number, lag = CHAMBER_PROBE.lagSeconds): Course {
  const gap = from - to;
  return {
    truth: (t) => to + gap * Math.exp(-t / tau),
    shown: (t) => to + (gap * (tau * Math.exp(-t / tau) - lag * Math.exp(-t / lag))) / (tau - lag),
  };
}

export const START = 1_700_000_000_000;

/** The readings of a course at the seconds given, with noise of the probe's own size. */
export function readingsOf(course: Course, seconds: readonly number[], seed: number): ProbeReading[] {
  const noise = seededNoise(seed);
  return seconds.map((t) => ({
    atMs: START + t * 1000,
    celsius: Math.round((course.shown(t) + 0.4 * noise()) * 4) / 4,
  }));
}

export const every = (step: number, until: number): number[] =>
  Array.from({ length: Math.floor(until / step) + 1 }, (_, i) => i * step);

/** A forecaster that has seen the readings. */
export function havingSeen(
  readings: readonly ProbeReading[],
  traits: ProbeTraits = CHAMBER_PROBE,
): Forecaster {
  const [first, ...rest] = readings;
  if (first === undefined) throw new Error('no readings');
  return rest.reduce(observe, startForecaster(traits, first));
}
