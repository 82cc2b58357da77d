/** The firings that the simulated shop knows, as plain data. Temperatures are trade habit, loads invented. */
import type { Segment } from '../hub/contract/schedule.ts';
import type { LoadSize } from './plant/steel-load.ts';

export type FurnaceName = 'forge' | 'oven';

/** Kinds of heat treatment that the plans stand for. */
export type FiringKind = 'anneal' | 'normalise' | 'harden' | 'temper';

/** One plan: what the hub calls a schedule, and the steel that the simulator puts in the fire for it. */
export interface Plan {
  readonly name: string;
  readonly title: string;
  readonly furnace: FurnaceName;
  readonly kind: FiringKind;
  readonly segments: readonly Segment[];
  readonly load: LoadSize;
}

function ramp(targetCelsius: number, toleranceCelsius: number, rateCelsiusPerHour: number | null): Segment {
  return { kind: 'ramp', targetCelsius, rateCelsiusPerHour, toleranceCelsius };
}

function soak(targetCelsius: number, toleranceCelsius: number, durationSeconds: number): Segment {
  return { kind: 'soak', targetCelsius, toleranceCelsius, durationSeconds };
}

function cool(targetCelsius: number, medium: 'still-air' | 'ash' | 'quench'): Segment {
  const anyRate = { maximumRateCelsiusPerHour: null, minimumRateCelsiusPerHour: null };
  return { kind: 'cool', targetCelsius, medium, ...anyRate };
}

export const FORGE_ANNEAL: Plan = {
  name: 'forge-anneal',
  title: 'Anneal in the forge',
  furnace: 'forge',
  kind: 'anneal',
  segments: [ramp(860, 15, null), soak(860, 15, 15 * 60), cool(550, 'ash')],
  load: { massKilograms: 1.5, thicknessMetres: 0.016 },
};

export const FORGE_NORMALISE: Plan = {
  name: 'forge-normalise',
  title: 'Normalise in the forge',
  furnace: 'forge',
  kind: 'normalise',
  segments: [ramp(870, 15, null), soak(870, 15, 10 * 60), cool(300, 'still-air')],
  load: { massKilograms: 1.2, thicknessMetres: 0.014 },
};

export const OVEN_HARDEN: Plan = {
  name: 'oven-harden',
  title: 'Harden in the oven',
  furnace: 'oven',
  kind: 'harden',
  segments: [ramp(815, 8, 600), soak(815, 8, 20 * 60), cool(60, 'quench')],
  load: { massKilograms: 0.6, thicknessMetres: 0.006 },
};

export const OVEN_TEMPER: Plan = {
  name: 'oven-temper',
  title: 'Temper in the oven',
  furnace: 'oven',
  kind: 'temper',
  segments: [ramp(200, 6, null), soak(200, 6, 2 * 3600), cool(60, 'still-air')],
  load: { massKilograms: 0.6, thicknessMetres: 0.006 },
};

/** Every plan, in the order in which a person would read them. */
export const PLANS: readonly Plan[] = [FORGE_ANNEAL, FORGE_NORMALISE, OVEN_HARDEN, OVEN_TEMPER];
