/** The hardness a temper leaves, as a band, from the best evidence there is for the steel. */
import { requireRange } from '../errors.ts';
import { type Composition, requireComposition } from './composition.ts';
import { MAYNIER } from './creusot-loire.ts';
import {
  type Answer,
  type Estimate,
  estimate,
  type Flag,
  flag,
  noEstimate,
  type Provenance,
} from './estimate.ts';
import { hollomonJaffeConstant } from './hollomon-jaffe.ts';
import { quenchedHardness } from './quenched-hardness.ts';
import { peakCelsius, type TemperHistory, temperParameter } from './temper-history.ts';
import { byMasterCurves, byMaynier, byMeasuredSet, byRegression } from './temper-opinions.ts';
import type { TemperSet } from './temper-set.ts';

/** A steel as tempering sees it: carbon and alloy as dissolved when quenched, curves of the grade if any. */
export interface TemperedSteel {
  readonly composition: Composition;
  readonly measured?: readonly TemperSet[];
}

export interface TemperPrediction {
  /** `T (C + log10 hours)`, kelvin, with the constant beside it. */
  readonly parameter: number;
  readonly constant: number;
  readonly hardnessHrc: Answer;
  /** Every way of predicting that speaks for this steel, the one that gave the value first. */
  readonly opinions: readonly Estimate[];
}

/** Highest tempering temperature answered for, °C: above it steel starts to turn to austenite. */
const MAX_TEMPER_CELSIUS = 720;
const MAX_RULE_CARBON = 1.6;
const LOWEST_HRC = 20;

/**
 * Predicted hardness after tempering fully hardened steel, HRC.
 *
 * Order of evidence: measured curves of the grade (their mean), master curves
 * for plain carbon steel, regression over all measured sets, Maynier. The band
 * is never narrower than ±2 HRC and reaches to the values of the master curves
 * and the regression where they speak too. More time or temperature never raises the
 * value, save for grades flagged `secondary-hardening`.
 *
 * @param history one hold (20 to 720 °C, up to 100 000 h) or a measured curve
 * @returns hardness without estimate (`outside-validity`) when nothing speaks
 *   for the steel; flagged `below-scale` under 20 HRC, where the number is
 *   only a trend
 * @throws PhysicsError `out-of-range`, `bad-input` for the temper or composition
 */
export function temperedHardness(steel: TemperedSteel, history: TemperHistory): TemperPrediction {
  const composition = requireComposition(steel.composition);
  requireRange('Tempering temperature', peakCelsius(history), 20, MAX_TEMPER_CELSIUS, '°C');
  const constant = hollomonJaffeConstant(Math.min(composition.C, MAX_RULE_CARBON));
  const measured = (steel.measured ?? [])
    .map((set) => byMeasuredSet(set, composition, history))
    .filter((opinion) => opinion !== null);
  const general = [
    byMasterCurves(composition, history),
    byRegression(composition, history),
    byMaynier(composition, history),
  ].filter((opinion) => opinion !== null);
  const lead = measured.length > 0 ? measured : general.slice(0, 1);
  // Maynier stays out of the band: on vanadium steel it would double it.
  const others = general
    .filter((opinion) => opinion.source !== MAYNIER.source)
    .map((opinion) => opinion.value);
  return {
    parameter: temperParameter(history, constant),
    constant,
    hardnessHrc: combined(lead, others, composition.C),
    opinions: [...measured, ...general],
  };
}

function combined(lead: readonly Estimate[], others: readonly number[], carbon: number): Answer {
  const first = lead[0];
  if (first === undefined) {
    return noEstimate(
      'HRC',
      'outside-validity',
      'No measured curve and no formula covers tempering of this steel',
    );
  }
  const mean = lead.reduce((sum, opinion) => sum + opinion.value, 0) / lead.length;
  const ceiling = quenchedCeiling(carbon);
  const value = Math.min(mean, ceiling.value);
  return estimate({
    value,
    low: Math.min(value - 2, ...lead.map((opinion) => opinion.low), ...others),
    high: Math.min(
      Math.max(value + 2, ...lead.map((opinion) => opinion.high), ...others),
      Math.max(ceiling.high, value + 2),
    ),
    unit: 'HRC',
    formula: lead.map((opinion) => opinion.formula).join('; '),
    from: weakest(lead, first),
    flags: [...uniqueFlags(lead), ...scaleFlag(value)],
  });
}

/** Tempering does not harden: no prediction above untempered martensite. Nothing known, no ceiling. */
function quenchedCeiling(carbon: number): { value: number; high: number } {
  if (carbon < 0.1) return { value: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  const quenched = quenchedHardness(Math.min(carbon, 1.15));
  // Measured curves start up to two points above the standard's figure.
  return { value: quenched.value + 2, high: quenched.value + 4 };
}

/** One standing for the mean of several: the weakest among them. */
function weakest(lead: readonly Estimate[], first: Estimate): Provenance {
  const order = [
    'common-practice',
    'from-memory',
    'derived-here',
    'published-secondary',
    'published-primary',
  ];
  const worst = lead.reduce(
    (found, opinion) => (order.indexOf(opinion.standing) < order.indexOf(found.standing) ? opinion : found),
    first,
  );
  return { standing: worst.standing, source: [...new Set(lead.map((opinion) => opinion.source))].join('; ') };
}

function uniqueFlags(lead: readonly Estimate[]): Flag[] {
  const seen = new Map(lead.flatMap((opinion) => opinion.flags).map((item) => [item.code, item]));
  return [...seen.values()];
}

function scaleFlag(value: number): Flag[] {
  return value < LOWEST_HRC
    ? [flag('below-scale', 'Below 20 HRC the Rockwell C scale is not defined: read it as "below 20"')]
    : [];
}
