/** The firings that the simulated shop knows, as plain data. Temperatures are trade habit, loads invented. */
import type { Segment } from '../hub/contract/schedule.ts';
import type { PieceSize } from './plant/steel-piece.ts';

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
  /** One piece or several of differing section. */
  readonly load: readonly PieceSize[];
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
  load: [
    { mark: 'axe blank', shape: 'plate', sectionMetres: 0.01, massKilograms: 1.1 },
    { mark: 'blade', shape: 'plate', sectionMetres: 0.006, massKilograms: 0.4 },
  ],
};

export const FORGE_NORMALISE: Plan = {
  name: 'forge-normalise',
  title: 'Normalise in the forge',
  furnace: 'forge',
  kind: 'normalise',
  segments: [ramp(870, 15, null), soak(870, 15, 10 * 60), cool(300, 'still-air')],
  load: [
    { mark: 'hatchet', shape: 'plate', sectionMetres: 0.01, massKilograms: 0.8 },
    { mark: 'punch', shape: 'bar', sectionMetres: 0.01, massKilograms: 0.4 },
  ],
};

const THIN_BLADES: readonly PieceSize[] = [
  { mark: 'kitchen knife', shape: 'plate', sectionMetres: 0.006, massKilograms: 0.4 },
  { mark: 'paring knife', shape: 'plate', sectionMetres: 0.004, massKilograms: 0.2 },
];

export const OVEN_HARDEN: Plan = {
  name: 'oven-harden',
  title: 'Harden in the oven',
  furnace: 'oven',
  kind: 'harden',
  segments: [ramp(815, 8, 600), soak(815, 8, 20 * 60), cool(60, 'quench')],
  load: THIN_BLADES,
};

export const OVEN_TEMPER: Plan = {
  name: 'oven-temper',
  title: 'Temper in the oven',
  furnace: 'oven',
  kind: 'temper',
  segments: [ramp(200, 6, null), soak(200, 6, 2 * 3600), cool(60, 'still-air')],
  load: THIN_BLADES,
};

/** A load whose thick piece is long behind the air, and whose thin one is not. */
export const FORGE_ANNEAL_THICK: Plan = {
  name: 'forge-anneal-thick',
  title: 'Anneal a hammer head in the forge',
  furnace: 'forge',
  kind: 'anneal',
  segments: [ramp(860, 15, null), soak(860, 15, 15 * 60), cool(550, 'ash')],
  load: [
    { mark: 'hammer head', shape: 'bar', sectionMetres: 0.05, massKilograms: 1.8 },
    { mark: 'knife', shape: 'plate', sectionMetres: 0.005, massKilograms: 0.3 },
  ],
};

/** The thin piece lies in the cold corner by the door. */
export const OVEN_HARDEN_THICK: Plan = {
  name: 'oven-harden-thick',
  title: 'Harden a hammer head in the oven',
  furnace: 'oven',
  kind: 'harden',
  segments: [ramp(815, 8, null), soak(815, 8, 25 * 60), cool(60, 'quench')],
  load: [
    { mark: 'hammer head', shape: 'bar', sectionMetres: 0.045, massKilograms: 1.2 },
    { mark: 'chisel', shape: 'bar', sectionMetres: 0.012, massKilograms: 0.3 },
    { mark: 'knife', shape: 'plate', sectionMetres: 0.004, massKilograms: 0.15, spot: 'door' },
  ],
};

/** What a shop does every day: firings that nobody has planned are drawn from these. */
export const EVERYDAY_PLANS: readonly Plan[] = [FORGE_ANNEAL, FORGE_NORMALISE, OVEN_HARDEN, OVEN_TEMPER];

/** Every plan, in the order in which a person would read them. */
export const PLANS: readonly Plan[] = [...EVERYDAY_PLANS, FORGE_ANNEAL_THICK, OVEN_HARDEN_THICK];
