/**
 * Arrests in the record of a load thermocouple: decalescence as the steel turns
 * to austenite on heating (Ac1), recalescence as it turns back on cooling (Ar1).
 *
 * The thermocouple must touch the piece: in furnace air nothing of this shows.
 * One arrest a leg at most is reported, the one with the most heat. Under a slow
 * furnace ramp (28 °C an hour) an arrest shows only when the chamber is recorded
 * too; without it, a chamber that slackens unannounced can pass for an arrest.
 */
import { stallsOf } from './arrest-derivative.ts';
import { inverseRatePeak, median, type Peak } from './arrest-inverse-rate.ts';
import { type Direction, type Leg, type LoadPoint, legsOf } from './arrest-legs.ts';

/** What upsets a record without the steel doing anything. */
export interface Disturbance {
  readonly atMs: number;
  readonly kind: 'door' | 'set-point';
}

export interface ArrestQuestion {
  readonly record: readonly LoadPoint[];
  /** Door openings and set-point changes; arrests within 60 s of one are rejected. */
  readonly disturbances?: readonly Disturbance[];
}

export interface Arrest {
  readonly kind: 'decalescence' | 'recalescence';
  readonly direction: Direction;
  /** Where the piece lingered longest, °C: Ac1 or Ar1 of this piece at this rate. */
  readonly celsius: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly fromMs: number;
  readonly toMs: number;
  /** Area of the inverse-rate peak, J/g: 75 to 85 for eutectoid steel, less with less pearlite. */
  readonly heatJoulesPerGram: number;
  /**
   * The chamber was measured all along, so the heat is corrected for its course.
   * Without: fair under a steady chamber, down to half of the truth under a ramp,
   * for the chamber runs ahead while the piece lingers.
   */
  readonly chamberKnown: boolean;
  /** How far the piece re-heated by itself, K; 0 when it only stalled. */
  readonly reheatedCelsius: number;
  /** The derivative method saw a stall at the same place. */
  readonly confirmedByDerivative: boolean;
  /** 0 to 1: our weighing of agreement, heat, height over scatter and density of readings. */
  readonly confidence: number;
}

export interface RejectedArrest extends Arrest {
  readonly reason: Disturbance['kind'];
}

export interface ArrestFindings {
  readonly arrests: readonly Arrest[];
  readonly rejected: readonly RejectedArrest[];
}

const DISTURBED_MS = 60_000;
/** The two methods speak of the same arrest when they agree within this, K. */
const AGREEMENT_CELSIUS = 15;
/** A transformation cannot give more heat than this; pure iron to austenite and all carbide: 90 J/g and error. */
const PLAUSIBLE = { least: 30, most: 110 } as const;
const SPARSE_CELSIUS = 5;

/**
 * Finds the arrests of a record.
 *
 * @returns empty lists when there are none: a record without an arrest is no error
 * @throws PhysicsError `bad-input` when time does not rise, `out-of-range` for
 *   temperatures outside -273 to 2000 °C
 */
export function findArrests(question: ArrestQuestion): ArrestFindings {
  const arrests: Arrest[] = [];
  const rejected: RejectedArrest[] = [];
  for (const leg of legsOf(question.record)) {
    const peak = inverseRatePeak(leg);
    if (peak === null) continue;
    const arrest = describe(leg, peak);
    const upset = question.disturbances?.find((one) => within(one.atMs, arrest));
    if (upset === undefined) arrests.push(arrest);
    else rejected.push({ ...arrest, reason: upset.kind });
  }
  return { arrests, rejected };
}

function within(atMs: number, arrest: Arrest): boolean {
  return atMs >= arrest.fromMs - DISTURBED_MS && atMs <= arrest.toMs + DISTURBED_MS;
}

function describe(leg: Leg, peak: Peak): Arrest {
  const inside = leg.points.filter((p) => p.celsius >= peak.lowCelsius && p.celsius <= peak.highCelsius);
  const fromMs = inside[0]?.atMs ?? leg.points[0]?.atMs ?? 0;
  const toMs = inside.at(-1)?.atMs ?? fromMs;
  const confirmed = stallsOf(leg).some(
    (stall) => Math.abs(stall.celsius - peak.celsius) <= AGREEMENT_CELSIUS,
  );
  return {
    kind: leg.direction === 'heating' ? 'decalescence' : 'recalescence',
    direction: leg.direction,
    celsius: peak.celsius,
    lowCelsius: peak.lowCelsius,
    highCelsius: peak.highCelsius,
    fromMs,
    toMs,
    heatJoulesPerGram: peak.joulesPerGram,
    chamberKnown: leg.points.every((point) => point.chamberCelsius !== undefined),
    reheatedCelsius: leg.direction === 'cooling' ? reheat(inside) : 0,
    confirmedByDerivative: confirmed,
    confidence: confidenceOf(leg, peak, confirmed),
  };
}

/**
 * Highest rise over an earlier low, K, of readings taken as medians of five, so
 * that noise does not count; under 2 K counts as none.
 */
function reheat(points: readonly LoadPoint[]): number {
  let lowest = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let i = 2; i < points.length - 2; i++) {
    const celsius = median(points.slice(i - 2, i + 3).map((point) => point.celsius));
    lowest = Math.min(lowest, celsius);
    most = Math.max(most, celsius - lowest);
  }
  return most >= 2 ? most : 0;
}

function confidenceOf(leg: Leg, peak: Peak, confirmed: boolean): number {
  const witnesses = confirmed ? 1 : 0.5;
  const { joulesPerGram } = peak;
  const plausible = joulesPerGram >= PLAUSIBLE.least && joulesPerGram <= PLAUSIBLE.most ? 1 : 0.5;
  const clear = peak.significance >= 8 ? 1 : 0.8;
  const dense = spacing(leg, peak) <= SPARSE_CELSIUS ? 1 : 0.5;
  const corrected = leg.points.every((point) => point.chamberCelsius !== undefined) ? 1 : 0.9;
  return Math.round(witnesses * plausible * clear * dense * corrected * 100) / 100;
}

/** Mean distance of readings around the peak, K. */
function spacing(leg: Leg, peak: Peak): number {
  const around = leg.points.filter((p) => Math.abs(p.celsius - peak.celsius) <= 50);
  return 100 / Math.max(1, around.length);
}
