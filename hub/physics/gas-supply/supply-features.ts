/**
 * What a window of pressure, mass and temperature looks like: the evidence by
 * which troubles of a gas supply are told apart (supply-trouble.ts).
 *
 * A channel that the shop does not have leaves its features null. Null is
 * "cannot be told" and never counts as good.
 */
import { PhysicsError } from '../errors.ts';
import { propaneVapourPressurePascals, STANDARD_ATMOSPHERE_PASCALS } from '../propane.ts';
import { type FlowChange, flowOver } from './supply-flow.ts';
import { SUPPLY_CUTS, type SupplySample } from './supply-sample.ts';

/**
 * - `dropped`: most of the fall came within seconds
 * - `sagged`: it took minutes
 * - `fell`: it fell while no samples came, so nobody knows which
 */
export type OutletShape = 'steady' | 'sagged' | 'dropped' | 'fell' | 'rose';

export interface SupplyFeatures {
  readonly outlet: OutletShape;
  /** Medians of the first and the last quarter of the window. */
  readonly outletBeforePascals: number;
  readonly outletAfterPascals: number;
  /** Next to nothing left. */
  readonly outletGone: boolean;
  /** The outlet was still rising at the end. */
  readonly stillRising: boolean;
  readonly flow: FlowChange | null;
  readonly kilogramsPerHourBefore: number | null;
  readonly kilogramsPerHourAfter: number | null;
  /** Liquid is left: by the scale, or since the cylinder is on the boiling line of its wall's temperature. */
  readonly liquidLeft: boolean | null;
  /** The cylinder can feed the regulator: by its pressure, or by the boiling line at its wall's temperature. */
  readonly cylinderFeeds: boolean | null;
}

const LEAST_SAMPLES = 12;

/**
 * Reads the features off a window of samples: minutes to an hour, in order of time, that begins before the
 * trouble and ends in it.
 *
 * @throws PhysicsError `bad-input` for fewer than 12 samples or time that does not rise
 */
export function supplyFeatures(samples: readonly SupplySample[]): SupplyFeatures {
  requireWindow(samples);
  const [early, late] = [quarter(samples, 0), quarter(samples, 3)];
  const before = median(early.map((sample) => sample.outletPascals));
  const after = median(late.map((sample) => sample.outletPascals));
  const flow = flowOver(samples);
  const outlet = outletShape(samples, before, after);
  return {
    outlet,
    outletBeforePascals: before,
    outletAfterPascals: after,
    outletGone: after < Math.max(SUPPLY_CUTS.gonePascals, before * SUPPLY_CUTS.goneShare),
    stillRising: isStillRising(late, Math.max(before, after)),
    flow: flow?.change ?? null,
    kilogramsPerHourBefore: flow?.before ?? null,
    kilogramsPerHourAfter: flow?.after ?? null,
    liquidLeft: liquidLeft(late, outlet),
    cylinderFeeds: cylinderFeeds(late, before),
  };
}

function requireWindow(samples: readonly SupplySample[]): void {
  if (samples.length < LEAST_SAMPLES) {
    throw new PhysicsError('bad-input', `a window needs ${LEAST_SAMPLES} samples, got ${samples.length}`);
  }
  const fault = samples.findIndex((sample, i) => i > 0 && !(sample.atMs > (samples[i - 1]?.atMs ?? 0)));
  if (fault > 0)
    throw new PhysicsError('bad-input', `time does not rise at sample ${fault}`, { index: fault });
}

/** Samples of one quarter of the window's time, 0 to 3. */
function quarter(samples: readonly SupplySample[], which: number): SupplySample[] {
  const [fromMs, toMs] = [samples[0]?.atMs ?? 0, samples.at(-1)?.atMs ?? 0];
  const edge = (part: number) => fromMs + ((toMs - fromMs) * part) / 4;
  return samples.filter(({ atMs }) => atMs >= edge(which) && atMs <= edge(which + 1));
}

function outletShape(samples: readonly SupplySample[], before: number, after: number): OutletShape {
  const change = after - before;
  const least = Math.max(SUPPLY_CUTS.outletShare * Math.max(before, after), SUPPLY_CUTS.gonePascals / 2);
  if (Math.abs(change) < least) return 'steady';
  if (change > 0) return 'rose';
  const fall = steepestFall(samples);
  if (fall.unseen >= (1 - SUPPLY_CUTS.suddenShare) * -change) return 'fell';
  return fall.seen >= SUPPLY_CUTS.suddenShare * -change ? 'dropped' : 'sagged';
}

/** Largest fall within the sudden time or between neighbours, and the largest across a hole, Pa. */
function steepestFall(samples: readonly SupplySample[]): { readonly seen: number; readonly unseen: number } {
  let [seen, unseen] = [0, 0];
  for (const [i, from] of samples.entries()) {
    for (let j = i + 1; j < samples.length; j += 1) {
      const to = samples[j];
      if (to === undefined || (j > i + 1 && to.atMs - from.atMs > SUPPLY_CUTS.suddenMs)) break;
      const fall = from.outletPascals - to.outletPascals;
      if (to.atMs - from.atMs > SUPPLY_CUTS.holeMs) unseen = Math.max(unseen, fall);
      else seen = Math.max(seen, fall);
    }
  }
  return { seen, unseen };
}

function isStillRising(late: readonly SupplySample[], levelPascals: number): boolean {
  const half = Math.floor(late.length / 2);
  const outlet = (part: readonly SupplySample[]) => median(part.map((sample) => sample.outletPascals));
  // Medians of the two halves lie half the quarter apart, so a steady creep shows half of its rise.
  const rise = 2 * (outlet(late.slice(half)) - outlet(late.slice(0, half)));
  return rise > SUPPLY_CUTS.risingShare * levelPascals;
}

function liquidLeft(late: readonly SupplySample[], outlet: OutletShape): boolean | null {
  const contents = medianOf(late, (sample) => sample.contentsKilograms);
  if (contents !== null) return contents > SUPPLY_CUTS.emptyKilograms;
  const pressure = medianOf(late, (sample) => sample.cylinderPascals);
  const boiling = boilingPascals(late, 0);
  if (pressure === null || boiling === null) return null;
  if (pressure + STANDARD_ATMOSPHERE_PASCALS >= SUPPLY_CUTS.boilingShare * boiling) return true;
  // The gauge sits behind the cylinder valve: shut at once, it shows nothing either, and the liquid is still there.
  return outlet === 'sagged' ? false : null;
}

function cylinderFeeds(late: readonly SupplySample[], wantedPascals: number): boolean | null {
  const boiling = boilingPascals(late, SUPPLY_CUTS.wallKelvin);
  const byBoiling = boiling === null ? null : boiling - STANDARD_ATMOSPHERE_PASCALS;
  const pressure = medianOf(late, (sample) => sample.cylinderPascals) ?? byBoiling;
  if (pressure === null) return null;
  return pressure >= wantedPascals * SUPPLY_CUTS.inletRatio + SUPPLY_CUTS.inletPascals;
}

/** Absolute pressure of the boiling line at the wall's temperature less a margin, Pa. */
function boilingPascals(late: readonly SupplySample[], marginKelvin: number): number | null {
  const celsius = medianOf(late, (sample) => sample.wallCelsius);
  if (celsius === null || celsius > 90 || celsius - marginKelvin < -90) return null;
  return propaneVapourPressurePascals(celsius - marginKelvin);
}

function medianOf(
  samples: readonly SupplySample[],
  pick: (sample: SupplySample) => number | null | undefined,
): number | null {
  const values = samples.map(pick).filter((value) => value !== null && value !== undefined);
  return values.length === 0 ? null : median(values);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.floor(middle)] ?? 0) + (sorted[Math.ceil(middle) - 1] ?? 0)) / 2;
}
