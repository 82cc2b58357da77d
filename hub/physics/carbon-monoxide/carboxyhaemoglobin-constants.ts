/**
 * The physiological constants of the Coburn-Forster-Kane equation.
 *
 * They describe a typical adult. Every one can be overridden, and people differ
 * by more than these sets do: the unborn, the ill and children are not in them.
 * Units are those of the published equation (ml, min, mmHg), named in each field.
 */
import { requireRange } from '../errors.ts';
import type { Provenance } from './provenance.ts';

export interface CohbConstants {
  /** Affinity of haemoglobin for CO against oxygen (Haldane ratio), 50 to 500. */
  readonly haldaneRatio: number;
  /** CO that the body makes itself, 0 to 1 ml/min. */
  readonly endogenousMlPerMin: number;
  /** Blood volume, 500 to 15 000 ml. */
  readonly bloodMl: number;
  /** Oxygen that a ml of blood binds when full, 0.05 to 0.4 ml. */
  readonly oxygenCapacityMlPerMl: number;
  /** Mean oxygen pressure in the lung capillaries, 20 to 700 mmHg. */
  readonly capillaryOxygenMmHg: number;
  /** 300 to 1600 mmHg. */
  readonly barometricMmHg: number;
  /** Water vapour in the lungs, 0 to 60 mmHg. */
  readonly waterVapourMmHg: number;
  /** Diffusing capacity of the lungs for CO, 1 to 200 ml/min/mmHg. */
  readonly diffusionMlPerMinMmHg: number;
  /** Alveolar ventilation, 500 to 150 000 ml/min. */
  readonly ventilationMlPerMin: number;
}

/** What does not depend on how hard someone works. */
export type BodyConstants = Omit<CohbConstants, 'diffusionMlPerMinMmHg' | 'ventilationMlPerMin'>;

/**
 * M 218, VCO 0.007, Vb 5500 from public copies of the equation and of the MIOSHA
 * calculator; capacity 0.20 follows from its 2.3 = 100/(218 x 0.2); capillary
 * oxygen 100 mmHg from memory (NIOSH 1972, Peterson and Stewart).
 */
export const TYPICAL_ADULT: BodyConstants = {
  haldaneRatio: 218,
  endogenousMlPerMin: 0.007,
  bloodMl: 5500,
  oxygenCapacityMlPerMl: 0.2,
  capillaryOxygenMmHg: 100,
  barometricMmHg: 760,
  waterVapourMmHg: 47,
};

/** Background of someone who does not smoke, %. A smoker begins with 2 to 20 %. Public implementation. */
export const NON_SMOKER_PERCENT = 0.75;

export const WORK_RATES = [
  'rest',
  'light',
  'heavy',
  'level-0',
  'level-1',
  'level-2',
  'level-3',
  'level-4',
] as const;
export type WorkRate = (typeof WORK_RATES)[number];

interface Effort {
  readonly diffusionMlPerMinMmHg: number;
  readonly ventilationMlPerMin: number;
  readonly from: Provenance;
}

const NIOSH_1972: Provenance = {
  standing: 'from-memory',
  source: 'NIOSH criteria document 1972',
  note: 'the heavy set puts the outer limits of UL 2034 on one line of 10 % carboxyhaemoglobin',
};
const LEVELS: Provenance = {
  standing: 'published-secondary',
  source: 'public implementation of the equation',
};

/** Gas volume as breathed (37 °C, wet) to standard (0 °C, dry, 760 mmHg). */
const STANDARD_SHARE = (713 / 760) * (273.15 / 310.15);

function niosh(diffusionMlPerMinMmHg: number, ventilationMlPerMin: number): Effort {
  return { diffusionMlPerMinMmHg, ventilationMlPerMin, from: NIOSH_1972 };
}

function level(diffusionMlPerMinMmHg: number, breathedLitres: number): Effort {
  return { diffusionMlPerMinMmHg, ventilationMlPerMin: breathedLitres * 1000 * STANDARD_SHARE, from: LEVELS };
}

const EFFORTS: Readonly<Record<WorkRate, Effort>> = {
  rest: niosh(30, 6000),
  light: niosh(40, 18_000),
  heavy: niosh(60, 30_000),
  'level-0': level(20, 6),
  'level-1': level(25, 12),
  'level-2': level(30, 18),
  'level-3': level(40, 24),
  'level-4': level(50, 30),
};

/** Where a work rate's figures come from. */
export function workRateFrom(rate: WorkRate): Provenance {
  return EFFORTS[rate].from;
}

/**
 * The constants of a typical adult at a work rate, with any of them replaced.
 *
 * @throws PhysicsError `out-of-range` for a constant outside {@link CohbConstants}
 */
export function cohbConstants(rate: WorkRate, overrides: Partial<CohbConstants> = {}): CohbConstants {
  const { diffusionMlPerMinMmHg, ventilationMlPerMin } = EFFORTS[rate];
  return requireConstants({ ...TYPICAL_ADULT, diffusionMlPerMinMmHg, ventilationMlPerMin, ...overrides });
}

const RANGES: Readonly<Record<keyof CohbConstants, readonly [low: number, high: number, unit: string]>> = {
  haldaneRatio: [50, 500, ''],
  endogenousMlPerMin: [0, 1, 'ml/min'],
  bloodMl: [500, 15_000, 'ml'],
  oxygenCapacityMlPerMl: [0.05, 0.4, 'ml/ml'],
  capillaryOxygenMmHg: [20, 700, 'mmHg'],
  barometricMmHg: [300, 1600, 'mmHg'],
  waterVapourMmHg: [0, 60, 'mmHg'],
  diffusionMlPerMinMmHg: [1, 200, 'ml/min/mmHg'],
  ventilationMlPerMin: [500, 150_000, 'ml/min'],
};

function requireConstants(constants: CohbConstants): CohbConstants {
  for (const [name, [low, high, unit]] of Object.entries(RANGES)) {
    requireRange(name, constants[name as keyof CohbConstants], low, high, unit);
  }
  return constants;
}

/**
 * Blood volume by body size, ml. Source: Nadler et al. 1962, seen in a public implementation.
 *
 * @param sex whose coefficients are used
 * @param heightMetres 1 to 2.5 m
 * @param kilograms 25 to 250 kg
 * @throws PhysicsError `out-of-range`
 */
export function nadlerBloodMl(sex: 'man' | 'woman', heightMetres: number, kilograms: number): number {
  const cubed = requireRange('Height', heightMetres, 1, 2.5, 'm') ** 3;
  const mass = requireRange('Body mass', kilograms, 25, 250, 'kg');
  const litres =
    sex === 'man' ? 0.3669 * cubed + 0.03219 * mass + 0.6041 : 0.3561 * cubed + 0.03308 * mass + 0.1833;
  return litres * 1000;
}

/**
 * Capillary oxygen pressure at an altitude's air pressure, mmHg: 0.21 (PB - 47) - 49.
 *
 * Source: a public page on the equation and a public implementation.
 *
 * @param barometricMmHg 450 to 1600 mmHg
 * @throws PhysicsError `out-of-range`
 */
export function capillaryOxygenAt(barometricMmHg: number): number {
  return 0.21 * (requireRange('Air pressure', barometricMmHg, 450, 1600, 'mmHg') - 47) - 49;
}
