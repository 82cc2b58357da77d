/**
 * Does this section harden through in this medium? Grossmann's severity H.
 *
 * The published chart of DI against diameter for each H was not at hand, so the
 * relation is computed from its definition: two quenches are alike when the
 * centre takes the same time to come half-way down to the bath. H is half the
 * film coefficient over the conductivity, in 1/inch (Totten, Webster, Bates et
 * al., "Limitations of the use of Grossman quench severity factors", seen).
 * So for a bar of diameter D the Biot number is H times D.
 */
import { requireRange } from '../errors.ts';
import type { Composition } from './composition.ts';
import { type Answer, type Estimate, estimate, noEstimate, type Provenance } from './estimate.ts';
import { halfTemperatureFourier, type SectionShape } from './half-temperature.ts';
import { idealDiameter, MM_PER_INCH } from './ideal-diameter.ts';

const CONDUCTION: Provenance = {
  standing: 'derived-here',
  source: 'half-temperature time by the conduction series, after the definition of Grossmann, Asimow & Urban',
};

export type QuenchMedium =
  | 'still-air'
  | 'still-oil'
  | 'moderate-oil'
  | 'good-oil'
  | 'strong-oil'
  | 'still-water'
  | 'strong-water'
  | 'still-brine'
  | 'strong-brine';

/** Severity H in 1/inch. From memory: Grossmann & Bain; a lecture note seen agrees for still oil, water and brine. */
export const QUENCH_SEVERITY_PER_INCH: Readonly<Record<QuenchMedium, readonly [low: number, high: number]>> =
  {
    'still-air': [0.02, 0.02],
    'still-oil': [0.25, 0.3],
    'moderate-oil': [0.35, 0.4],
    'good-oil': [0.4, 0.5],
    'strong-oil': [0.5, 0.8],
    'still-water': [0.9, 1],
    'strong-water': [1.5, 2],
    'still-brine': [2, 2],
    'strong-brine': [5, 5],
  };

/** Half-temperature time of the ideal quench over that of one inch, `Fo(ideal) / 4`. */
const IDEAL_FOURIER = halfTemperatureFourier('bar', Number.POSITIVE_INFINITY);

/**
 * Ideal diameter that a section needs to be half martensite at the centre, mm:
 * the inverse of {@link criticalSection}.
 *
 * @param sectionMm bar diameter or plate thickness, 0.5 to 1000 mm
 * @param severityPerInch Grossmann H, 0.01 to 100 per inch; infinity for the ideal quench
 * @throws PhysicsError `out-of-range`
 */
export function idealDiameterNeeded(shape: SectionShape, sectionMm: number, severityPerInch: number): number {
  requireRange('Section', sectionMm, 0.5, 1000, 'mm');
  requireSeverity(severityPerInch);
  return neededMm(shape, sectionMm, severityPerInch);
}

function requireSeverity(severityPerInch: number): void {
  if (severityPerInch === Number.POSITIVE_INFINITY) return;
  requireRange('Quench severity', severityPerInch, 0.01, 100, '1/inch');
}

function neededMm(shape: SectionShape, sectionMm: number, severityPerInch: number): number {
  const biot = (severityPerInch * sectionMm) / MM_PER_INCH;
  return sectionMm * Math.sqrt(halfTemperatureFourier(shape, biot) / IDEAL_FOURIER);
}

/**
 * Largest section that is half martensite at its centre, mm.
 *
 * @param idealDiameterMm DI, 2 to 500 mm
 * @param severityPerInch Grossmann H, 0.01 to 100 per inch; infinity for the ideal quench
 * @throws PhysicsError `out-of-range`
 */
export function criticalSection(
  shape: SectionShape,
  idealDiameterMm: number,
  severityPerInch: number,
): number {
  const wanted = requireRange('Ideal critical diameter', idealDiameterMm, 2, 500, 'mm');
  requireSeverity(severityPerInch);
  let [low, high] = [wanted * 1e-4, wanted];
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (neededMm(shape, middle, severityPerInch) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** @see hardensThrough */
export interface SectionInput {
  readonly composition: Composition;
  readonly shape: SectionShape;
  /** Bar diameter or plate thickness, 0.5 to 1000 mm. */
  readonly sectionMm: number;
  readonly medium: QuenchMedium;
}

export interface SectionVerdict {
  readonly idealDiameter: Answer;
  /** Largest section that hardens to its centre (50 % martensite) in this medium. */
  readonly critical: Answer;
  readonly hardensThrough: 'yes' | 'no' | 'borderline' | 'unknown';
}

/**
 * Whether a section is at least half martensite at its centre. A file-hard
 * centre (90 % martensite and more) needs a smaller section than that.
 *
 * @returns `borderline` inside the band of the critical section; `unknown`
 *   where ASTM A255 does not cover the steel
 * @throws PhysicsError `out-of-range` for the section
 */
export function hardensThrough(input: SectionInput): SectionVerdict {
  const section = requireRange('Section', input.sectionMm, 0.5, 1000, 'mm');
  const ideal = idealDiameter(input.composition);
  if (ideal.value === null) {
    const none = noEstimate('mm', ideal.reason.code, ideal.reason.message);
    return { idealDiameter: ideal, critical: none, hardensThrough: 'unknown' };
  }
  const critical = criticalBand(input.shape, ideal, input.medium);
  return { idealDiameter: ideal, critical, hardensThrough: verdict(section, critical) };
}

function criticalBand(shape: SectionShape, ideal: Estimate, medium: QuenchMedium): Estimate {
  const [gentle, fierce] = QUENCH_SEVERITY_PER_INCH[medium];
  return estimate({
    value: criticalSection(shape, ideal.value, (gentle + fierce) / 2),
    low: criticalSection(shape, ideal.low, gentle),
    high: criticalSection(shape, ideal.high, fierce),
    unit: 'mm',
    formula: `equal half-temperature time, H ${gentle === fierce ? gentle : `${gentle} to ${fierce}`} per inch`,
    from: CONDUCTION,
    flags: ideal.flags,
  });
}

function verdict(sectionMm: number, critical: Estimate): 'yes' | 'no' | 'borderline' {
  if (sectionMm <= critical.low) return 'yes';
  return sectionMm > critical.high ? 'no' : 'borderline';
}
