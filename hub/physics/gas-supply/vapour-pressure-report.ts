/**
 * Pressure over liquid propane by its temperature, or the other way round: what
 * the route `gas/vapour-pressure` answers.
 *
 * The pressure of a cylinder shows the temperature of its liquid, not how much
 * is left; only when the last liquid is gone does it fall.
 */
import { PhysicsError } from '../errors.ts';
import {
  propaneBoilingCelsius,
  propaneLatentHeatJoulesPerKilogram,
  propaneVapourPressurePascals,
  STANDARD_ATMOSPHERE_PASCALS,
} from '../propane.ts';
import { requirePropane } from './orifice-report.ts';

/** Exactly one of the two. */
export interface VapourPressureQuestion {
  readonly gas: string;
  /** -100 to 96 °C. */
  readonly celsius?: number;
  /** Absolute, about 2.9 kPa to 4.19 MPa. */
  readonly absolutePascals?: number;
}

export interface VapourPressureReport {
  readonly celsius: number;
  readonly absolutePascals: number;
  /** Over one standard atmosphere; below 0 under -42.1 °C, where nothing comes out. */
  readonly gaugePascals: number;
  /** What gas as sold may show instead, since it holds lighter gases too. */
  readonly commercialHighGaugePascals: number;
  readonly latentHeatJoulesPerKilogram: number;
}

/**
 * Absolute pressure of commercial over that of pure propane, at most. Derived here from an LP-gas handbook:
 * 127, 196, 210 and 287 psi gauge at 70, 100, 105 and 130 °F.
 */
export const COMMERCIAL_PRESSURE_RATIO = 1.135;

/**
 * Both sides of the boiling line.
 *
 * @throws PhysicsError `not-applicable` for a gas other than propane, `bad-input` unless exactly one is given,
 *   `out-of-range`, `no-solution`
 */
export function vapourPressureReport(question: VapourPressureQuestion): VapourPressureReport {
  requirePropane(question.gas);
  const { celsius: asked, absolutePascals: pressed } = question;
  if ((asked === undefined) === (pressed === undefined)) {
    throw new PhysicsError('bad-input', 'give either a temperature or a pressure', { ...question });
  }
  const celsius = asked ?? propaneBoilingCelsius(pressed ?? Number.NaN);
  const absolutePascals = pressed ?? propaneVapourPressurePascals(celsius);
  return {
    celsius,
    absolutePascals,
    gaugePascals: absolutePascals - STANDARD_ATMOSPHERE_PASCALS,
    commercialHighGaugePascals: absolutePascals * COMMERCIAL_PRESSURE_RATIO - STANDARD_ATMOSPHERE_PASCALS,
    latentHeatJoulesPerKilogram: propaneLatentHeatJoulesPerKilogram(celsius),
  };
}
