/** From the cylinder valve to the flame: a regulator that droops and locks up, a hose, and the burner's jet. */
import { propaneJetKilogramsPerSecond } from '../../hub/physics/orifice.ts';
import { STANDARD_ATMOSPHERE_PASCALS } from '../../hub/physics/propane.ts';

/** 0.889 mm (0.035 inch) with a taper. Invented choice. */
const JET = { boreMetres: 0.000889, dischargeCoefficient: 0.85 };
const RATED_KILOGRAMS_PER_SECOND = 2 / 3600;
/** What the regulator needs above its outlet, Pa at rated flow. */
const INLET_LOSS_PASCALS = 20_000;
/** With nothing flowing the outlet stands this much above the setting. */
const LOCK_UP_SHARE = 0.04;
/** How fast the hose empties through the burner when nothing follows. */
const BLEED_SECONDS = 2;
/** A hose's loss follows the flow with this, or a step of a second would swing. */
const LOSS_LAG_SECONDS = 4;

/** What may be wrong between cylinder and flame. */
export interface GasFaults {
  /** An obstruction (ice) lets no more than this through, Pa gauge. */
  readonly ceilingPascals: number;
  /** False: the cylinder valve is shut, or an excess-flow device has tripped. */
  readonly valveOpen: boolean;
  /** The regulator's outlet falls by this share at its rated flow. */
  readonly droopShare: number;
  /** Gas taken by something else behind the same regulator, as a share of the burner's. */
  readonly extraFlowShare: number;
  /** A leaking seat: with nothing flowing the outlet climbs by this, Pa/s. */
  readonly creepPascalsPerSecond: number;
  /** A kinked hose before the gauge: pressure lost at rated flow, Pa. */
  readonly hoseLossPascals: number;
  /** How much of the jet is open, above 0 to 1. */
  readonly jetShare: number;
  /** Gas that escapes before the burner, kg/s. */
  readonly escapeKilogramsPerSecond: number;
}

export const SOUND_GAS: GasFaults = {
  ceilingPascals: Number.MAX_VALUE,
  valveOpen: true,
  droopShare: 0.12,
  extraFlowShare: 0,
  creepPascalsPerSecond: 0,
  hoseLossPascals: 0,
  jetShare: 1,
  escapeKilogramsPerSecond: 0,
};

/** The gas on its way. */
export interface GasTrainInput {
  /** What the regulator is set to, Pa gauge. 0: shut off and burnt empty. */
  readonly setPascals: number;
  /** False: the burner's own valve is shut and the hose stays under pressure. Default true. */
  readonly burnerOpen?: boolean;
  readonly cylinderGaugePascals: number;
  readonly gasCelsius: number;
  readonly faults?: GasFaults;
}

/** Regulator, hose and jet; the flow of one step sets the droop of the next, as a real spring lags. */
export class GasTrain {
  /** Between regulator and burner. */
  supplyGaugePascals = 0;
  /** Through the burner. */
  flowKilogramsPerSecond = 0;
  /** Into the room before the burner. */
  leakKilogramsPerSecond = 0;
  /** To something else behind the same regulator, where it burns. */
  #extraKilogramsPerSecond = 0;
  #lossPascals = 0;
  #crept = 0;

  /** All that leaves the cylinder, kg/s. */
  get drawKilogramsPerSecond(): number {
    return this.flowKilogramsPerSecond + this.#extraKilogramsPerSecond + this.leakKilogramsPerSecond;
  }

  step(input: GasTrainInput, seconds = 1): void {
    const faults = input.faults ?? SOUND_GAS;
    const flows = input.burnerOpen ?? true;
    this.supplyGaugePascals = flows
      ? this.#openPascals(input, faults, seconds)
      : this.#shutPascals(input, faults, seconds);
    const jet = flows && this.supplyGaugePascals > 0 ? this.#jetFlow(input.gasCelsius) : 0;
    this.flowKilogramsPerSecond = jet * faults.jetShare;
    this.#extraKilogramsPerSecond = this.flowKilogramsPerSecond * faults.extraFlowShare;
    const feeds = faults.valveOpen && input.setPascals > 0 && input.cylinderGaugePascals > 0;
    this.leakKilogramsPerSecond = feeds ? faults.escapeKilogramsPerSecond : 0;
  }

  #openPascals(input: GasTrainInput, faults: GasFaults, seconds: number): number {
    this.#crept = 0;
    if (input.setPascals === 0) return 0;
    const load = this.drawKilogramsPerSecond / RATED_KILOGRAMS_PER_SECOND;
    const share = -Math.expm1(-seconds / LOSS_LAG_SECONDS);
    this.#lossPascals += share * (faults.hoseLossPascals * load ** 2 - this.#lossPascals);
    const wanted = input.setPascals * (1 - faults.droopShare * load) - this.#lossPascals;
    const possible = input.cylinderGaugePascals - INLET_LOSS_PASCALS * load;
    const fed = Math.max(0, Math.min(wanted, possible, faults.ceilingPascals));
    return faults.valveOpen ? fed : bled(this.supplyGaugePascals, seconds);
  }

  /** Under pressure and still: what was in the hose stays in it, and a bad seat lets more in. */
  #shutPascals(input: GasTrainInput, faults: GasFaults, seconds: number): number {
    const trapped = this.supplyGaugePascals;
    if (!faults.valveOpen) return trapped;
    const fed = Math.min(input.setPascals * (1 + LOCK_UP_SHARE), input.cylinderGaugePascals);
    this.#crept += faults.creepPascalsPerSecond * seconds;
    // A regulator cannot take gas back, so the hose keeps what it has.
    return Math.min(Math.max(trapped, fed + this.#crept), Math.max(trapped, input.cylinderGaugePascals));
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

/** Less than the gauge can show is nothing. */
function bled(pascals: number, seconds: number): number {
  const left = pascals * Math.exp(-seconds / BLEED_SECONDS);
  return left < 10 ? 0 : left;
}
