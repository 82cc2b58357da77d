/** What is measured of a gas supply, and the figures by which it is judged. */

/** One instant. Pressures are gauge; a channel that is not there is null or left out. */
export interface SupplySample {
  /** Epoch ms. */
  readonly atMs: number;
  /** Between regulator and burner. */
  readonly outletPascals: number;
  /** Before the regulator. */
  readonly cylinderPascals?: number | null;
  /** Gas left by the scale. */
  readonly contentsKilograms?: number | null;
  /** Cylinder wall at the liquid. */
  readonly wallCelsius?: number | null;
}

/** Figures of the features. Sizes of droop and practice from the trade; the cuts are derived here. */
export const SUPPLY_CUTS = {
  /** A change of the outlet smaller than this share is none: single-stage regulators wander by as much. */
  outletShare: 0.06,
  /** Less than this share of what was, or than these pascals, is nothing. */
  goneShare: 0.1,
  gonePascals: 2000,
  /** A fall is sudden when this share of it came within so many ms. */
  suddenShare: 0.6,
  suddenMs: 20_000,
  /** Neighbouring samples further apart than this are a hole. */
  holeMs: 120_000,
  /** A rise of this share within the last quarter is still going on. */
  risingShare: 0.02,
  /** A change of mass flow smaller than this share is none. */
  flowShare: 0.08,
  /** Less flow than this share of what was, has stopped. */
  stoppedShare: 0.15,
  /** A burner's pilot flame, kg/h: a scale that cannot see this cannot say that nothing flows. */
  leastKilogramsPerHour: 0.15,
  /** A slope is told from the scale's noise by so many standard errors. */
  standardErrors: 3,
  /** Less than this is an empty cylinder, kg: a good scale's error with the tare's. */
  emptyKilograms: 0.25,
  /** What the regulator wants before it, over what it gives. */
  inletRatio: 1.25,
  inletPascals: 30_000,
  /** The wall is warmer than the liquid by up to this, K. */
  wallKelvin: 3,
  /** Absolute pressure under this share of the boiling line: no liquid. */
  boilingShare: 0.75,
} as const;
