/** Gas flow of a jet by what a gauge shows: what the route `gas/orifice-flow` answers. */
import { PhysicsError } from '../errors.ts';
import { chokedPressureRatio, PROPANE_HEAT_RATIO, propaneJetKilogramsPerSecond } from '../orifice.ts';
import { STANDARD_ATMOSPHERE_PASCALS } from '../propane.ts';
import { type HeatInput, heatInput } from './heat-input.ts';

export interface OrificeQuestion {
  /** Only propane is known here. */
  readonly gas: string;
  /** 0.1 to 10 mm. */
  readonly boreMm: number;
  /** At the jet, 0 to 2.8 MPa; a gauge before a long hose reads too much. */
  readonly gaugePressurePa: number;
  /** 0.8 to 0.9 for drilled jets with a taper, 0.6 to 0.75 for sharp edges. */
  readonly dischargeCoefficient: number;
  /** -50 to 100 °C. */
  readonly gasCelsius: number;
  /** Air pressure behind the jet, Pa absolute; one standard atmosphere where left out. */
  readonly atmospherePa?: number;
}

/**
 * - `choked`: the jet's throat is at the speed of sound; what lies behind it no longer matters
 * - `subsonic`: the difference of pressures drives the flow
 * - `none`: nothing pushes
 */
export type FlowRegime = 'choked' | 'subsonic' | 'none';

export interface OrificeReport extends HeatInput {
  readonly kilogramsPerHour: number;
  readonly lowKilogramsPerHour: number;
  readonly highKilogramsPerHour: number;
  readonly regime: FlowRegime;
  /** Absolute pressure behind over before the jet, and the ratio at and below which flow is choked. */
  readonly pressureRatio: number;
  readonly chokedRatio: number;
}

/** Bore, coefficient, gauge, hose and gas temperature together, without a scale: at least this share. Derived here. */
export const FLOW_ERROR_SHARE = 0.15;

/**
 * Flow, heat and regime of a jet.
 *
 * Source: isentropic nozzle flow of an ideal gas (textbook); see propaneJetKilogramsPerSecond.
 *
 * @throws PhysicsError `not-applicable` for a gas other than propane, `out-of-range`
 */
export function orificeReport(question: OrificeQuestion): OrificeReport {
  requirePropane(question.gas);
  const downstreamPascals = question.atmospherePa ?? STANDARD_ATMOSPHERE_PASCALS;
  const upstreamPascals = downstreamPascals + question.gaugePressurePa;
  const perSecond = propaneJetKilogramsPerSecond({
    boreMetres: question.boreMm / 1000,
    dischargeCoefficient: question.dischargeCoefficient,
    upstreamPascals,
    downstreamPascals,
    gasCelsius: question.gasCelsius,
  });
  const kilogramsPerHour = perSecond * 3600;
  const pressureRatio = downstreamPascals / upstreamPascals;
  const chokedRatio = chokedPressureRatio(PROPANE_HEAT_RATIO);
  return {
    ...heatInput(kilogramsPerHour),
    kilogramsPerHour,
    lowKilogramsPerHour: kilogramsPerHour * (1 - FLOW_ERROR_SHARE),
    highKilogramsPerHour: kilogramsPerHour * (1 + FLOW_ERROR_SHARE),
    regime: regimeOf(pressureRatio, chokedRatio),
    pressureRatio,
    chokedRatio,
  };
}

function regimeOf(pressureRatio: number, chokedRatio: number): FlowRegime {
  if (pressureRatio >= 1) return 'none';
  return pressureRatio <= chokedRatio ? 'choked' : 'subsonic';
}

/**
 * Refuses gases that this folder does not know.
 *
 * @throws PhysicsError `not-applicable`
 */
export function requirePropane(gas: string): void {
  if (gas === 'propane') return;
  throw new PhysicsError('not-applicable', `Only propane is known here, not ${gas}`, { gas });
}
