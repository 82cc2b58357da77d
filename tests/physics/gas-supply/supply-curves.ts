/**
 * A cylinder, a regulator and a jet with one trouble, read every ten seconds by
 * a pressure sensor, a scale and a wall thermometer that scatter.
 */
import type { SupplySample } from '../../../hub/physics/gas-supply/supply-sample.ts';
import { propaneJetKilogramsPerSecond } from '../../../hub/physics/orifice.ts';
import { propaneVapourPressurePascals, STANDARD_ATMOSPHERE_PASCALS } from '../../../hub/physics/propane.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';

export const START_MS = 1_700_000_000_000;

/** What the trouble changes, by minute. */
export interface SupplyPlan {
  /** Regulator, Pa gauge. */
  readonly setPascals: (minute: number) => number;
  /** What comes through an obstruction at most, Pa gauge. */
  readonly ceilingPascals?: (minute: number) => number;
  /** Liquid, °C. */
  readonly liquidCelsius: (minute: number) => number;
  /** Cylinder valve: 1 open, 0 shut. */
  readonly valve?: (minute: number) => number;
  /** Bore of the jets together, mm; 0 shut. */
  readonly boreMm?: (minute: number) => number;
  /** The hose is off: the outlet shows nothing and this much flows into the room, kg/s. */
  readonly escaping?: (minute: number) => number;
  /** Rise of a leaking seat with nothing flowing, Pa a minute. */
  readonly creepPascals?: number;
  readonly startKilograms?: number;
  readonly minutes?: number;
}

export interface Sensors {
  readonly cylinder: boolean;
  readonly mass: boolean;
  readonly wall: boolean;
}

export const EVERYTHING: Sensors = { cylinder: true, mass: true, wall: true };
export const NO_CYLINDER_GAUGE: Sensors = { cylinder: false, mass: true, wall: true };

const STEP_SECONDS = 10;
const RATED_KILOGRAMS_PER_SECOND = 2 / 3600;
const DROOP_SHARE = 0.12;
/** Below this the last gas leaves the cylinder without liquid, kg. */
const LAST_VAPOUR_KILOGRAMS = 0.05;

/** Readings of the plan. `seed` chooses the scatter. */
export function supplyCurve(plan: SupplyPlan, seed = 1, sensors = EVERYTHING): SupplySample[] {
  const noise = seededNoise(seed);
  const samples: SupplySample[] = [];
  let [kilograms, flow] = [plan.startKilograms ?? 5, 0];
  for (let second = 0; second <= (plan.minutes ?? 30) * 60; second += STEP_SECONDS) {
    const minute = second / 60;
    const cylinder = cylinderPascals(plan, minute, kilograms);
    const escaping = plan.escaping?.(minute) ?? 0;
    const outlet = escaping > 0 ? 0 : outletPascals(plan, minute, cylinder, flow);
    flow = kilograms > 0 ? jetFlow(plan, minute, outlet) + escaping : 0;
    kilograms = Math.max(0, kilograms - flow * STEP_SECONDS);
    samples.push({
      atMs: START_MS + second * 1000,
      outletPascals: outlet + 200 * noise(),
      cylinderPascals: sensors.cylinder ? cylinder + 1000 * noise() : null,
      contentsKilograms: sensors.mass ? kilograms + 0.003 * noise() : null,
      wallCelsius: sensors.wall ? plan.liquidCelsius(minute) + 1.5 + 0.2 * noise() : null,
    });
  }
  return samples;
}

function cylinderPascals(plan: SupplyPlan, minute: number, kilograms: number): number {
  const boiling = propaneVapourPressurePascals(plan.liquidCelsius(minute)) - STANDARD_ATMOSPHERE_PASCALS;
  const left = Math.min(1, kilograms / LAST_VAPOUR_KILOGRAMS);
  return Math.max(0, boiling) * left * (plan.valve?.(minute) ?? 1);
}

function outletPascals(plan: SupplyPlan, minute: number, cylinder: number, flow: number): number {
  const load = flow / RATED_KILOGRAMS_PER_SECOND;
  const wanted = plan.setPascals(minute) * (1 - DROOP_SHARE * load) + (plan.creepPascals ?? 0) * minute;
  const ceiling = plan.ceilingPascals?.(minute) ?? Number.POSITIVE_INFINITY;
  return Math.max(0, Math.min(wanted, cylinder - 20_000 * load, ceiling));
}

function jetFlow(plan: SupplyPlan, minute: number, outlet: number): number {
  const boreMetres = (plan.boreMm?.(minute) ?? 0.95) / 1000;
  if (boreMetres === 0 || outlet <= 0) return 0;
  return propaneJetKilogramsPerSecond({
    boreMetres,
    dischargeCoefficient: 0.85,
    upstreamPascals: outlet + STANDARD_ATMOSPHERE_PASCALS,
    downstreamPascals: STANDARD_ATMOSPHERE_PASCALS,
    gasCelsius: 10,
  });
}

const fixed = (value: number) => (): number => value;
const from = (minute: number, before: number, after: number) => (now: number) =>
  now < minute ? before : after;

/** 20 psi, a mild cylinder, half full. */
export const GOOD: SupplyPlan = { setPascals: fixed(138_000), liquidCelsius: (minute) => 8 - minute * 0.1 };

/** One constructed curve a cause. */
export const TROUBLES = {
  'cylinder-chill': { ...GOOD, liquidCelsius: (minute: number) => -36 + 24 * Math.exp(-minute / 12) },
  'empty-cylinder': { ...GOOD, startKilograms: 0.36 },
  'shut-valve': { ...GOOD, valve: from(15, 1, 0) },
  'regulator-creep': { ...GOOD, boreMm: fixed(0), creepPascals: 1500 },
  'regulator-droop': { ...GOOD, boreMm: from(8, 0.7, 1.3) },
  restriction: {
    ...GOOD,
    ceilingPascals: (minute: number) => 138_000 * (1 - 0.55 * Math.min(1, minute / 22)),
  },
  'gas-escaping': { ...GOOD, escaping: from(15, 0, 2.5 / 3600) },
} as const satisfies Record<string, SupplyPlan>;

/** Not troubles, but they look like some. */
export const LOOKALIKES = {
  'turned-up': { ...GOOD, setPascals: from(12, 80_000, 138_000) },
  'lock-up': { ...GOOD, boreMm: from(10, 1.3, 0) },
} as const satisfies Record<string, SupplyPlan>;

/** A step down to a lower pressure: someone's hand, or a hose that kinked at once. */
export const STEP_DOWN: SupplyPlan = { ...GOOD, setPascals: from(12, 138_000, 80_000) };
