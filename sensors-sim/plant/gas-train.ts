/** From the cylinder valve to the flame: a regulator that droops, an obstruction, and the burner's jet. */
import { propaneJetKilogramsPerSecond } from '../../hub/physics/orifice.ts';
import { STANDARD_ATMOSPHERE_PASCALS } from '../../hub/physics/propane.ts';

/** 0.889 mm (0.035 inch) with a taper. Invented choice. */
const JET = { boreMetres: 0.000889, dischargeCoefficient: 0.85 };
const RATED_KILOGRAMS_PER_SECOND = 2 / 3600;
/** The regulator's outlet falls by this share at its rated flow. */
const DROOP_SHARE = 0.12;
/** What the regulator needs above its outlet, Pa at rated flow. */
const INLET_LOSS_PASCALS = 20_000;

/** The gas on its way. */
export interface GasTrainInput {
  /** What the regulator is set to, Pa gauge. */
  readonly setPascals: number;
  readonly cylinderGaugePascals: number;
  /** An obstruction (ice, a kinked hose) lets no more than this through, Pa gauge. */
  readonly ceilingPascals: number;
  readonly gasCelsius: number;
}

/** Regulator and jet; the flow of one step sets the droop of the next, as a real spring lags. */
export class GasTrain {
  supplyGaugePascals = 0;
  flowKilogramsPerSecond = 0;

  step(input: GasTrainInput): void {
    const load = this.flowKilogramsPerSecond / RATED_KILOGRAMS_PER_SECOND;
    const wanted = input.setPascals * (1 - DROOP_SHARE * load);
    const possible = input.cylinderGaugePascals - INLET_LOSS_PASCALS * load;
    this.supplyGaugePascals = Math.max(0, Math.min(wanted, possible, input.ceilingPascals));
    this.flowKilogramsPerSecond = this.supplyGaugePascals > 0 ? this.#jetFlow(input.gasCelsius) : 0;
  }

  #jetFlow(gasCelsius: number): number {
    return propaneJetKilogramsPerSecond({
      boreMetres: JET.boreMetres,
      dischargeCoefficient: JET.dischargeCoefficient,
      upstreamPascals: STANDARD_ATMOSPHERE_PASCALS + this.supplyGaugePascals,
      downstreamPascals: STANDARD_ATMOSPHERE_PASCALS,
      gasCelsius: Math.max(-50, gasCelsius),
    });
  }
}
