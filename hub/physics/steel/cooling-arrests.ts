/**
 * Ar1 and Ar3: transformation on cooling lies below Ac1 and Ac3, the more the
 * faster the cooling.
 */
import { requireRange } from '../errors.ts';
import { type Composition, outsideOf } from './composition.ts';
import { logLimitingRate, MAYNIER_RANGE } from './creusot-loire.ts';
import { type Answer, type Estimate, estimate, noEstimate, type Provenance } from './estimate.ts';

/** Cooling rate of the published table of arrests, °C/h (50 °F/h). */
export const REFERENCE_COOLING_CELSIUS_PER_HOUR = 28;

/**
 * Undercooling at 28 °C/h over the ten steels of the published table (ASM
 * Handbook vol. 4, 1991, from memory): mean, least and most, °C.
 */
const AT_REFERENCE = {
  ar1: { value: 43, low: 30, high: 70 },
  ar3: { value: 44, low: 20, high: 65 },
} as const;

/**
 * Growth with rate, undercooling ~ rate^n. No published law was found. These
 * exponents are set so that air cooling (about 1 °C/s) lands where practice
 * looks for recalescence, 30 to 100 °C below Ac1.
 */
const RATE_EXPONENT = { value: 0.12, low: 0.05, high: 0.15 } as const;

const HYSTERESIS: Provenance = {
  standing: 'derived-here',
  source:
    'arrests at 28 °C/h, ASM Handbook vol. 4 (1991), from memory; widening with rate by common practice',
};
const OUCHI: Provenance = { standing: 'published-secondary', source: 'Ouchi et al. 1982, one transcription' };

/** Austenitising parameter of 850 °C for half an hour, °C: the usual hardening heat. */
const USUAL_PA_CELSIUS = 834;
/** Carbon up to which Ouchi's plate formula speaks, mass %. */
const OUCHI_MAX_CARBON = 0.2;

interface Undercooling {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * How far Ar1 lies below Ac1 (or Ar3 below Ac3), °C, at a cooling rate.
 *
 * @param coolingCelsiusPerHour 1 to 20 000 °C/h
 * @throws PhysicsError `out-of-range`
 */
export function undercooling(arrest: 'ar1' | 'ar3', coolingCelsiusPerHour: number): Undercooling {
  const rate = requireRange('Cooling rate', coolingCelsiusPerHour, 1, 20_000, '°C/h');
  const ratio = rate / REFERENCE_COOLING_CELSIUS_PER_HOUR;
  const base = AT_REFERENCE[arrest];
  // Slower than the reference the exponents trade places, so that the band stays in order.
  const [narrow, wide] =
    ratio >= 1 ? [RATE_EXPONENT.low, RATE_EXPONENT.high] : [RATE_EXPONENT.high, RATE_EXPONENT.low];
  return {
    value: base.value * ratio ** RATE_EXPONENT.value,
    low: base.low * ratio ** narrow,
    high: base.high * ratio ** wide,
  };
}

/** @see coolingArrests */
export interface CoolingArrests {
  readonly ar1: Answer;
  readonly ar3: Answer;
}

/**
 * Ar1 and Ar3 at a cooling rate, °C.
 *
 * @param heating Ac1 and Ac3 of the same steel
 * @param coolingCelsiusPerHour 1 to 20 000 °C/h
 * @returns no estimates (`forms-martensite`) when the rate is above the one
 *   that Maynier gives for full martensite (asked only inside 0.1 to 0.5 % C)
 * @throws PhysicsError `out-of-range` for the rate
 */
export function coolingArrests(
  composition: Composition,
  heating: { readonly ac1: Answer; readonly ac3: Answer },
  coolingCelsiusPerHour: number,
): CoolingArrests {
  const { ac1, ac3 } = heating;
  if (ac1.value === null) return { ar1: ac1, ar3: ac1 };
  if (ac3.value === null) return { ar1: ac3, ar3: ac3 };
  if (formsMartensite(composition, coolingCelsiusPerHour)) {
    const none = noEstimate(
      'celsius',
      'forms-martensite',
      'Cooled this fast the steel goes to martensite: no Ar1, Ar3',
    );
    return { ar1: none, ar3: none };
  }
  const ar1 = below(ac1, undercooling('ar1', coolingCelsiusPerHour), 'Ar1');
  const slow = below(ac3, undercooling('ar3', coolingCelsiusPerHour), 'Ar3');
  return { ar1, ar3: notBelow(ouchiOr(composition, slow), ar1) };
}

function formsMartensite(composition: Composition, rate: number): boolean {
  if (outsideOf(composition, MAYNIER_RANGE).length > 0) return false;
  return Math.log10(rate) > logLimitingRate('martensite-100', composition, USUAL_PA_CELSIUS);
}

function below(heating: Estimate, gap: Undercooling, name: string): Estimate {
  return estimate({
    value: heating.value - gap.value,
    low: heating.low - gap.high,
    high: heating.high - gap.low,
    unit: 'celsius',
    formula: `${name}: undercooling below ${heating.formula}`,
    from: HYSTERESIS,
    flags: heating.flags,
  });
}

/**
 * Ouchi 1982 for plate of 8 mm: `910 - 310 C - 80 Mn - 20 Cu - 15 Cr - 55 Ni - 80 Mo`.
 * Low carbon only; it widens the band and takes no part elsewhere.
 */
export function ouchiAr3(composition: Composition, plateMm = 8): Estimate {
  const { C, Mn = 0, Cu = 0, Cr = 0, Ni = 0, Mo = 0 } = composition;
  const carbon = requireRange('Carbon', C, 0, OUCHI_MAX_CARBON, '%');
  const value = 910 - 310 * carbon - 80 * Mn - 20 * Cu - 15 * Cr - 55 * Ni - 80 * Mo + 0.35 * (plateMm - 8);
  return estimate({
    value,
    low: value - 20,
    high: value + 20,
    unit: 'celsius',
    formula: 'Ouchi 1982 Ar3',
    from: OUCHI,
  });
}

function ouchiOr(composition: Composition, slow: Estimate): Estimate {
  if (composition.C > OUCHI_MAX_CARBON) return slow;
  const ouchi = ouchiAr3(composition);
  return { ...slow, low: Math.min(slow.low, ouchi.value), high: Math.max(slow.high, ouchi.value) };
}

function notBelow(upper: Estimate, lower: Estimate): Estimate {
  return {
    ...upper,
    value: Math.max(upper.value, lower.value),
    low: Math.max(upper.low, lower.low),
    high: Math.max(upper.high, lower.high),
  };
}
