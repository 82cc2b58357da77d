/** The Coburn-Forster-Kane equation as it is printed, for integrating; shares no code with the closed form. */
import type { CohbConstants } from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';

/** d(percent)/dt per minute under a level that may change with time. */
export function cohbSlope(constants: CohbConstants, ppmAt: (minutes: number) => number) {
  const c = constants;
  const lungs = c.barometricMmHg - c.waterVapourMmHg;
  const beta = 1 / c.diffusionMlPerMinMmHg + lungs / c.ventilationMlPerMin;
  return (minutes: number, percent: number): number => {
    const x = (percent / 100) * c.oxygenCapacityMlPerMl;
    const oxygen = c.oxygenCapacityMlPerMl - x;
    const inspired = ppmAt(minutes) * 1e-6 * lungs;
    const back = (x * c.capillaryOxygenMmHg) / (c.haldaneRatio * oxygen);
    const perMinute = c.endogenousMlPerMin / c.bloodMl + (inspired - back) / (c.bloodMl * beta);
    return (100 * perMinute) / c.oxygenCapacityMlPerMl;
  };
}
