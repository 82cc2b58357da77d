/** Where martensite starts and how far it has gone: Ms, Koistinen-Marburger, retained austenite. */
import { requireRange } from '../errors.ts';
import { type Composition, outsideOf, percentOf } from './composition.ts';
import { type Answer, estimate, type Flag, flag, noEstimate, type Provenance } from './estimate.ts';
import { describeOutside, type FormulaReading, readFormula } from './formula.ts';
import { MS_FORMULAS, VAN_BOHEMEN_MS } from './formulas-ms.ts';
import { EUTECTOID_CARBON_PERCENT } from './iron-carbon.ts';

/** Koistinen & Marburger 1959: `fraction = 1 - exp(-0.011 (Ms - T))`, per °C. */
export const KOISTINEN_MARBURGER_PER_CELSIUS = 0.011;

const KM: Provenance = {
  standing: 'published-secondary',
  source: 'Koistinen & Marburger 1959, several copies',
};

/** Half-width below which no Ms band shrinks, °C: "92 % within 25 °C" (Andrews, from memory). */
const MS_ERROR_CELSIUS = 25;

/** Carbon that a hypereutectoid steel dissolves when hardened between Ac1 and Acm, mass % (common practice). */
export const DISSOLVED_CARBON_PERCENT = { low: 0.6, usual: 0.68, high: 0.75 } as const;

/**
 * Ms, °C: van Bohemen's value inside the band over every formula at hand.
 *
 * @param composition with carbon as it stands IN AUSTENITE; give the bulk
 *   carbon only when all of it is dissolved
 * @returns no estimate (`outside-validity`) when no formula covers the steel
 */
export function ms(composition: Composition): Answer {
  const readings = MS_FORMULAS.map((formula) => readFormula(formula, composition));
  const primary = readings.find((reading) => withinReach(reading));
  if (primary === undefined) return refuse(composition);
  const all = readings.map((reading) => reading.celsius);
  return estimate({
    value: primary.celsius,
    low: Math.min(primary.celsius - MS_ERROR_CELSIUS, ...all),
    high: Math.max(primary.celsius + MS_ERROR_CELSIUS, ...all),
    unit: 'celsius',
    formula: primary.formula.name,
    from: primary.formula.from,
    flags: msFlags(composition, primary, readings),
  });
}

/** Inside the validity, or no more than a tenth above it. */
function withinReach(reading: FormulaReading): boolean {
  return reading.outside.every((item) => item.percent >= item.low && item.percent <= item.high * 1.1);
}

function refuse(composition: Composition): Answer {
  const outside = outsideOf(composition, VAN_BOHEMEN_MS.range);
  return noEstimate(
    'celsius',
    'outside-validity',
    `No Ms formula covers this steel: ${describeOutside(outside)}. Use the maker's data sheet.`,
  );
}

function msFlags(
  composition: Composition,
  primary: FormulaReading,
  readings: readonly FormulaReading[],
): Flag[] {
  const flags: Flag[] = [];
  const outside = readings.filter((reading) => reading.outside.length > 0).length;
  if (outside > 0) {
    flags.push(
      flag(
        'band-includes-extrapolation',
        `${outside} of ${readings.length} formulas are used beyond their validity`,
      ),
    );
  }
  if (primary.outside.length > 0) {
    flags.push(
      flag(
        'slightly-outside-validity',
        `${primary.formula.name} was not made for ${describeOutside(primary.outside)}`,
      ),
    );
  }
  if (composition.C > EUTECTOID_CARBON_PERCENT) {
    flags.push(
      flag(
        'all-carbon-dissolved',
        'Assumes all carbon is in austenite; hardened from between Ac1 and Acm it holds 0.60 to 0.75 % and Ms is higher',
      ),
    );
  }
  return flags;
}

/** Martensite fraction at a temperature, 0 to 1 (Koistinen-Marburger). */
export function martensiteFraction(msCelsius: number, celsius: number): number {
  if (celsius >= msCelsius) return 0;
  return 1 - Math.exp(-KOISTINEN_MARBURGER_PER_CELSIUS * (msCelsius - celsius));
}

/**
 * How far below Ms a martensite fraction is reached, °C: 209 for 90 %, 419 for 99 %.
 *
 * @param fraction 0 to 0.9999
 * @throws PhysicsError `out-of-range`
 */
export function undercoolingForFraction(fraction: number): number {
  requireRange('Martensite fraction', fraction, 0, 0.9999, '');
  return -Math.log(1 - fraction) / KOISTINEN_MARBURGER_PER_CELSIUS;
}

/**
 * Temperature at which a fraction of martensite is reached, °C. Mf is commonly
 * read as 99 %.
 *
 * @param msAnswer what {@link ms} says; its band is carried on
 */
export function martensiteTemperature(msAnswer: Answer, fraction: number): Answer {
  if (msAnswer.value === null) return msAnswer;
  const below = undercoolingForFraction(fraction);
  const value = msAnswer.value - below;
  const flags = [...msAnswer.flags];
  if (value < 20) {
    flags.push(flag('below-room-temperature', 'Austenite is retained after a quench to room temperature'));
  }
  return estimate({
    value,
    low: msAnswer.low - below,
    high: msAnswer.high - below,
    unit: 'celsius',
    formula: `Koistinen-Marburger ${Math.round(fraction * 100)} % below ${msAnswer.formula}`,
    from: KM,
    flags,
  });
}

/** @see retainedAustenite */
export interface RetainedAusteniteInput {
  readonly composition: Composition;
  /** Carbon dissolved in austenite, mass %; see below when left out. */
  readonly carbonInAustenitePercent?: number;
  /** Temperature that the quench reaches, °C, -196 to 400; 20 when left out. */
  readonly quenchCelsius?: number;
}

/**
 * Austenite left after a quench, as a fraction 0 to 1 (Koistinen-Marburger).
 *
 * Without `carbonInAustenitePercent` a steel up to 0.77 % C is taken as fully
 * dissolved, and one above as holding 0.60 to 0.75 % (common practice for
 * hardening between Ac1 and Acm), flagged `dissolved-carbon-assumed`.
 *
 * @throws PhysicsError `out-of-range` for the quench temperature or the carbon
 */
export function retainedAustenite(input: RetainedAusteniteInput): Answer {
  const celsius = requireRange('Quench temperature', input.quenchCelsius ?? 20, -196, 400, '°C');
  const assumed =
    input.carbonInAustenitePercent === undefined && input.composition.C > EUTECTOID_CARBON_PERCENT;
  const usual = assumed ? DISSOLVED_CARBON_PERCENT.usual : dissolved(input);
  const at = (carbonPercent: number): Answer => ms({ ...input.composition, C: carbonPercent });
  const start = at(usual);
  const rich = assumed ? at(DISSOLVED_CARBON_PERCENT.high) : start;
  const lean = assumed ? at(DISSOLVED_CARBON_PERCENT.low) : start;
  if (start.value === null) return noEstimate('fraction', start.reason.code, start.reason.message);
  const coolest = rich.low ?? start.low;
  const hottest = lean.high ?? start.high;
  const flags = assumed
    ? [flag('dissolved-carbon-assumed', 'Austenite taken as holding 0.60 to 0.75 % carbon')]
    : [];
  return estimate({
    value: 1 - martensiteFraction(start.value, celsius),
    low: 1 - martensiteFraction(hottest, celsius),
    high: 1 - martensiteFraction(coolest, celsius),
    unit: 'fraction',
    formula: `Koistinen-Marburger from ${start.formula}`,
    from: KM,
    flags: [...flags, ...alloyFlag(input.composition)],
  });
}

function dissolved(input: RetainedAusteniteInput): number {
  const carbon = input.carbonInAustenitePercent ?? input.composition.C;
  return requireRange('Carbon in austenite', carbon, 0, input.composition.C, '%');
}

function alloyFlag(composition: Composition): Flag[] {
  if (percentOf(composition, 'Cr') <= 2) return [];
  return [
    flag('alloy-locked-in-carbides', 'Part of the chromium stays in carbides; Ms is then higher than given'),
  ];
}
