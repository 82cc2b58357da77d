/**
 * Cooling media as film coefficients, with what can honestly be said of them.
 *
 * A constant film coefficient is a crude stand-in for a liquid: a vapour
 * blanket, boiling and plain convection follow each other. Measured on two
 * mineral oils: 500 W/(m² K) at 800 °C, a sharp peak of 4700 to 6000 between
 * 520 and 550 °C, 500 again at 150 °C (Buczek and Telejko, Int. J. Heat Fluid
 * Flow 44 (2013) 358, abstract). So liquids carry a wide band, and a cooling
 * curve should be drawn for both of its ends.
 *
 * Liquids: Grossmann severity H (1/in), from memory: Grossmann and Bain; turned
 * into an average film coefficient by his definition H = h / (2 k), k = 27.3 W/(m K).
 */
import { PhysicsError } from '../errors.ts';
import type { Band, Standing } from './standing.ts';

export const MEDIUM_IDS = [
  'still-air',
  'moving-air',
  'still-oil',
  'moving-oil',
  'still-water',
  'moving-water',
  'still-brine',
] as const;
export type MediumId = (typeof MEDIUM_IDS)[number];

export interface Medium {
  readonly id: MediumId;
  /** W/(m² K), without radiation. */
  readonly filmWM2K: Band;
  /** 0 for liquids: radiation is part of the film coefficient there. */
  readonly emissivity: Band;
  /** Usual temperature, °C. */
  readonly usualCelsius: number;
  readonly standing: Standing;
  readonly source: string;
}

const PER_INCH = 1 / 0.0254;
/** Austenite, EN 1993-1-2 above 800 °C. */
const HOT_STEEL_W_MK = 27.3;

/**
 * Average film coefficient of a quench from Grossmann's severity.
 *
 * @param severityPerInch H in 1/in, more than 0
 * @returns W/(m² K): h = 2 k H
 */
export function filmFromSeverity(severityPerInch: number): number {
  return 2 * HOT_STEEL_W_MK * severityPerInch * PER_INCH;
}

const OXIDISED: Band = { low: 0.7, value: 0.8, high: 0.9 };
const NONE: Band = { low: 0, value: 0, high: 0 };
const GROSSMANN = 'Grossmann and Bain severity, from memory, as a constant average; definition H = h/(2k)';

const MEDIA: Readonly<Record<MediumId, Medium>> = {
  'still-air': {
    id: 'still-air',
    filmWM2K: { low: 5, value: 10, high: 15 },
    emissivity: OXIDISED,
    usualCelsius: 20,
    standing: 'common-practice',
    source: 'natural convection 5 to 15 W/(m² K); oxidised steel radiates with 0.7 to 0.9',
  },
  'moving-air': {
    id: 'moving-air',
    filmWM2K: { low: 20, value: 40, high: 100 },
    emissivity: OXIDISED,
    usualCelsius: 20,
    standing: 'common-practice',
    source: 'a fan across the piece; depends on its speed',
  },
  'still-oil': liquid('still-oil', 0.25, 0.3, 0.4, 50),
  'moving-oil': liquid('moving-oil', 0.35, 0.5, 0.8, 50),
  'still-water': liquid('still-water', 0.9, 1, 1.5, 20),
  'moving-water': liquid('moving-water', 1.2, 1.7, 2.5, 20),
  'still-brine': liquid('still-brine', 1.5, 2, 3, 20),
};

/**
 * A medium by its id.
 *
 * @throws PhysicsError `bad-input` for an unknown id; the message lists those there are
 */
export function mediumOf(id: string): Medium {
  const known = MEDIUM_IDS.find((one) => one === id);
  if (known !== undefined) return MEDIA[known];
  throw new PhysicsError('bad-input', `unknown medium ${id}; there are ${MEDIUM_IDS.join(', ')}`, { id });
}

function liquid(id: MediumId, low: number, value: number, high: number, usualCelsius: number): Medium {
  const filmWM2K = {
    low: filmFromSeverity(low),
    value: filmFromSeverity(value),
    high: filmFromSeverity(high),
  };
  return { id, filmWM2K, emissivity: NONE, usualCelsius, standing: 'memory', source: GROSSMANN };
}
