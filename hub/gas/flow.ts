import type { FurnaceGas, GasBand } from '../contract/gas.ts';
import { FLOW_ERROR_SHARE, type OrificeReport, orificeReport } from '../physics/gas-supply/orifice-report.ts';

/** Gas through the burners of a furnace by the gauge before their jets. */

/** Gas in a hose in a room. Common practice, no source: 10 °C more or less change the flow by 2 %. */
const GAS_CELSIUS = 15;
/** Less gauge pressure than this feeds no flame and is taken for a gauge at rest. Common practice, no source. */
export const FLAME_PASCALS = 1500;
/** 20 psi: hard firing of an atmospheric burner, the most where nobody has set a band. Common practice. */
const MOST_PASCALS = 137_895;
/** Highest that the physics of the jet takes. */
const GAUGE_LIMIT_PASCALS = 2_800_000;

/**
 * One jet as the orifice reports it, at the gauge.
 *
 * @param pascals gauge; below 0 counts as 0, above 2.8 MPa as that
 */
export function jetOf(gas: FurnaceGas, pascals: number): OrificeReport {
  return orificeReport({
    gas: gas.gas,
    boreMm: gas.boreMm,
    gaugePressurePa: Math.min(GAUGE_LIMIT_PASCALS, Math.max(0, pascals)),
    dischargeCoefficient: gas.dischargeCoefficient,
    gasCelsius: GAS_CELSIUS,
  });
}

/** All burners together, kg/h; under the pressure that feeds a flame, none. */
export function flowOf(gas: FurnaceGas, pascals: number): number {
  return pascals < FLAME_PASCALS ? 0 : gas.burners * jetOf(gas, pascals).kilogramsPerHour;
}

/** The most that this furnace's burners take, kg/h: at the top of their band. */
export function mostFlow(gas: FurnaceGas): number {
  return flowOf(gas, Math.max(FLAME_PASCALS, gas.highPascals ?? MOST_PASCALS));
}

/** A figure by the jet with its error of 15 %. */
export function jetBand(value: number): GasBand {
  return { low: value * (1 - FLOW_ERROR_SHARE), value, high: value * (1 + FLOW_ERROR_SHARE) };
}
