/** A grade of steel: what it is called, what it is made of, and what is recommended for it. */
import type { Composition, ElementRanges } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { TemperSet } from './temper-set.ts';

export type NameSystem = 'SAE/AISI' | 'EN' | 'DIN' | 'JIS' | 'W-Nr' | 'trade';

export interface GradeName {
  readonly system: NameSystem;
  readonly name: string;
  /** False for a near equivalent: like, not the same. */
  readonly same: boolean;
  readonly from: Provenance;
}

export type StepName =
  | 'forge'
  | 'normalise'
  | 'full-anneal'
  | 'spheroidise'
  | 'sub-critical-anneal'
  | 'stress-relief'
  | 'austenitise'
  | 'temper';

/**
 * The recommended temperatures of one step, °C. For `forge`, high is where
 * forging starts and low is where it must stop.
 */
export interface StepWindow {
  readonly step: StepName;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** To be added on both sides: 10 for published rows, 20 for the rest, °C. */
  readonly uncertaintyCelsius: number;
  readonly from: Provenance;
  /** Fastest cooling that the step allows, °C/h, down to `coolToCelsius`. */
  readonly maxCoolingCelsiusPerHour?: number;
  readonly coolToCelsius?: number;
  readonly holdHours?: readonly [number, number];
  readonly note?: string;
}

export type QuenchFluid = 'water' | 'brine' | 'fast-oil' | 'oil' | 'warm-oil' | 'air';

export interface QuenchAdvice {
  readonly fluids: readonly QuenchFluid[];
  /** Above this thickness only the first fluid hardens it, mm. */
  readonly oilBelowMm?: number;
  readonly note?: string;
  readonly from: Provenance;
}

export interface HardnessRange {
  /** Null where the source says "up to". */
  readonly lowHrc: number | null;
  readonly highHrc: number;
  readonly from: Provenance;
}

export interface Grade {
  readonly id: string;
  readonly names: readonly GradeName[];
  readonly limits: ElementRanges;
  readonly limitsFrom: Provenance;
  readonly nominal: Composition;
  readonly windows: readonly StepWindow[];
  /** Steps that must not be done to this grade (air-hardening steel is not normalised). */
  readonly notRecommended: readonly StepName[];
  readonly quench: QuenchAdvice;
  readonly quenched: HardnessRange;
  readonly annealedBrinell?: readonly [number, number];
  readonly temperSets: readonly TemperSet[];
}

export function published(source: string): Provenance {
  return { standing: 'published-secondary', source };
}

export function fromMemory(source: string): Provenance {
  return { standing: 'from-memory', source };
}

export const COMMON_PRACTICE: Provenance = { standing: 'common-practice', source: '' };

/** What a step may add to its two temperatures. */
export type StepExtras = Pick<
  StepWindow,
  'maxCoolingCelsiusPerHour' | 'coolToCelsius' | 'holdHours' | 'note'
>;

const PUBLISHED_UNCERTAINTY_CELSIUS = 10;
const OTHER_UNCERTAINTY_CELSIUS = 20;

/** One window; its uncertainty follows from how the numbers are known. */
export function window(
  step: StepName,
  lowCelsius: number,
  highCelsius: number,
  from: Provenance,
  extras: StepExtras = {},
): StepWindow {
  const seen = from.standing === 'published-primary' || from.standing === 'published-secondary';
  const uncertaintyCelsius = seen ? PUBLISHED_UNCERTAINTY_CELSIUS : OTHER_UNCERTAINTY_CELSIUS;
  return { step, lowCelsius, highCelsius, uncertaintyCelsius, from, ...extras };
}

/** Slow cooling of an anneal: no faster than this, down to that. */
export function cooling(maxCoolingCelsiusPerHour: number, coolToCelsius: number, note?: string): StepExtras {
  return { maxCoolingCelsiusPerHour, coolToCelsius, ...(note === undefined ? {} : { note }) };
}

export function sae(name: string): GradeName {
  return { system: 'SAE/AISI', name, same: true, from: fromMemory('SAE and AISI designations') };
}

const EQUIVALENTS = fromMemory('cross-reference tables; near equivalents differ in limits');

/** A European designation with its number, as a near equivalent. */
export function european(name: string, number: string): readonly GradeName[] {
  return [
    { system: 'EN', name, same: false, from: EQUIVALENTS },
    { system: 'W-Nr', name: number, same: false, from: EQUIVALENTS },
  ];
}
