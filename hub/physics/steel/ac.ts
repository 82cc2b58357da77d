/** Ac1 and Ac3: the start and the end of transformation on heating. */
import type { Composition, Outside } from './composition.ts';
import { type Answer, type Estimate, estimate, type Flag, flag, noEstimate } from './estimate.ts';
import { type CompositionFormula, describeOutside, type FormulaReading, readFormula } from './formula.ts';
import {
  ANDREWS_AC1,
  ANDREWS_AC3,
  ELDIS_AC1,
  ELDIS_AC3,
  GRANGE_AC1,
  GRANGE_AC3,
  HOUGARDY_AC1,
  HOUGARDY_AC3,
  TRZASKA_AC1,
  TRZASKA_AC3,
} from './formulas-ac.ts';
import { KASATKIN_AC1, KASATKIN_AC3 } from './formulas-kasatkin.ts';
import { EUTECTOID_CARBON_PERCENT } from './iron-carbon.ts';

export const AC1_FORMULAS: readonly CompositionFormula[] = [
  ANDREWS_AC1,
  GRANGE_AC1,
  ELDIS_AC1,
  HOUGARDY_AC1,
  TRZASKA_AC1,
  KASATKIN_AC1,
];

export const AC3_FORMULAS: readonly CompositionFormula[] = [
  ANDREWS_AC3,
  GRANGE_AC3,
  ELDIS_AC3,
  HOUGARDY_AC3,
  TRZASKA_AC3,
  KASATKIN_AC3,
];

/** A limit overstepped by no more than this share is answered, with a flag and a wider band. */
const SLACK = 0.1;
/** Standard errors in the half-width of a band: about 95 % of steels lie inside two. */
const COVERAGE = 2;
/** Standard error where a formula claims none, °C. */
const DEFAULT_ERROR_CELSIUS = 15;

function tooFar(item: Outside): boolean {
  return item.percent > item.high * (1 + SLACK) || item.percent < item.low;
}

function apartFromCarbon(outside: readonly Outside[]): readonly Outside[] {
  return outside.filter((item) => item.element !== 'C');
}

function isUsable(reading: FormulaReading): boolean {
  return !reading.outside.some(tooFar);
}

function validityFlags(reading: FormulaReading): Flag[] {
  const flags: Flag[] = [];
  const others = apartFromCarbon(reading.outside);
  if (others.length > 0) {
    flags.push(
      flag(
        'slightly-outside-validity',
        `${reading.formula.name} was not made for ${describeOutside(others)}`,
      ),
    );
  }
  if (others.length < reading.outside.length) {
    flags.push(
      flag(
        'carbon-outside-stated-range',
        `${reading.formula.name} states carbon below 0.6 %; used beyond it`,
      ),
    );
  }
  return flags;
}

function bandAround(
  primary: FormulaReading,
  readings: readonly FormulaReading[],
): { low: number; high: number } {
  const error = primary.formula.errorCelsius ?? DEFAULT_ERROR_CELSIUS;
  const margin = (apartFromCarbon(primary.outside).length > 0 ? COVERAGE + 1 : COVERAGE) * error;
  const all = readings.map((reading) => reading.celsius);
  return {
    low: Math.min(primary.celsius - margin, ...all),
    high: Math.max(primary.celsius + margin, ...all),
  };
}

function refuse(what: string, primary: FormulaReading): Answer {
  const far = primary.outside.filter(tooFar);
  return noEstimate(
    'celsius',
    'outside-validity',
    `No formula for ${what} covers this steel: ${describeOutside(far)}. Use the maker's data sheet.`,
  );
}

/**
 * Ac1, the start of transformation on heating, °C, by Andrews 1965; the band
 * spans twice his standard error (11.5 °C) and every other formula in its validity.
 *
 * Carbon beyond a formula's stated range is flagged, not refused: the eutectoid
 * line of the iron-carbon diagram is level, so carbon hardly matters here.
 *
 * @returns no estimate (`outside-validity`) when an alloying element lies more
 *   than 10 % beyond Andrews' limits (D2, for one)
 */
export function ac1(composition: Composition): Answer {
  const primary = readFormula(ANDREWS_AC1, composition);
  if (apartFromCarbon(primary.outside).some(tooFar)) return refuse('Ac1', primary);
  const usable = AC1_FORMULAS.map((formula) => readFormula(formula, composition)).filter(
    (reading) => !apartFromCarbon(reading.outside).some(tooFar),
  );
  return estimate({
    value: primary.celsius,
    ...bandAround(primary, usable),
    unit: 'celsius',
    formula: primary.formula.name,
    from: primary.formula.from,
    flags: validityFlags(primary),
  });
}

/**
 * Ac3, the end of transformation on heating, °C, never below Ac1.
 *
 * Every linear Ac3 formula falls below Ac1 near and above the eutectoid. There
 * the answer is Ac1 itself with the flag `ac3-at-ac1`; above 0.77 % C the flag
 * `hypereutectoid` adds that carbides remain up to Acm.
 *
 * @param ac1Answer what {@link ac1} says of the same steel
 * @returns no estimate when Ac1 has none
 */
export function ac3(composition: Composition, ac1Answer: Answer): Answer {
  const primary = readFormula(ANDREWS_AC3, composition);
  if (ac1Answer.value === null) return refuse('Ac3', primary);
  const usable = AC3_FORMULAS.map((formula) => readFormula(formula, composition)).filter(isUsable);
  return liftToAc1(composition, primary, bandAround(primary, usable), ac1Answer);
}

function liftToAc1(
  composition: Composition,
  primary: FormulaReading,
  band: { low: number; high: number },
  start: Estimate,
): Estimate {
  const merged = primary.celsius <= start.value;
  const flags = validityFlags(primary);
  if (merged) flags.push(flag('ac3-at-ac1', 'Transformation ends as it starts: Ac3 is about Ac1'));
  if (composition.C > EUTECTOID_CARBON_PERCENT) {
    flags.push(flag('hypereutectoid', 'Carbides remain above Ac1; the upper limit is Acm, not Ac3'));
  }
  // Above the eutectoid the other formulas are extrapolations, so the band of Ac1 rules.
  const high = composition.C > EUTECTOID_CARBON_PERCENT && merged ? start.high : band.high;
  return estimate({
    value: Math.max(primary.celsius, start.value),
    low: Math.max(band.low, start.low),
    high: Math.max(high, start.high),
    unit: 'celsius',
    formula: merged ? `Ac3 ~ Ac1 (${ANDREWS_AC1.name})` : primary.formula.name,
    from: merged ? ANDREWS_AC1.from : primary.formula.from,
    flags,
  });
}
