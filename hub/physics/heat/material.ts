/**
 * What a body is made of, as the stepper sees it: conductivity, and the
 * relation between heat content and temperature, with a memory of how much of
 * the steel has turned to austenite.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { risingTable } from './enthalpy-table.ts';
import { conductivity, STEEL_DENSITY_KG_M3, specificEnthalpy, specificHeat } from './steel-properties.ts';

/** A material at one point, in equilibrium with its heat content. */
export interface Settled {
  readonly celsius: number;
  /** Share turned to austenite, 0 to 1. Always 0 for a material that does not transform. */
  readonly austenite: number;
  /** dh/dT here, J/(kg K): the slope that Newton's iteration walks along. */
  readonly capacityJKgK: number;
}

/** Where a point stood before this step: transformation depends on the way it came. */
export interface Memory {
  readonly celsius: number;
  readonly austenite: number;
  /** Length of the step; a slow transformation cannot finish in a short one. */
  readonly seconds: number;
}

export interface Material {
  readonly densityKgM3: number;
  /** W/(m K) */
  conductivity(celsius: number): number;
  /** J/kg above 20 °C. */
  enthalpy(celsius: number, austenite: number): number;
  /** The one temperature and austenite share that hold this much heat (J/kg). */
  settle(enthalpyJKg: number, memory: Memory): Settled;
  /** Austenite share of a piece that has rested at this temperature after heating. */
  austeniteAtRest(celsius: number): number;
}

/** Constant properties: for checks against exact solutions and for packing materials. */
export interface PlainProperties {
  readonly densityKgM3: number;
  readonly specificHeatJKgK: number;
  /** W/(m K), a number or straight line k = at20 + perKelvin (T - 20). */
  readonly conductivityWmK: number | { readonly at20: number; readonly perKelvin: number };
}

/**
 * A material with constant specific heat and no transformation.
 *
 * @throws PhysicsError `out-of-range` when a property is not positive and finite
 */
export function plainMaterial(properties: PlainProperties): Material {
  const { densityKgM3, specificHeatJKgK: c, conductivityWmK: k } = properties;
  requireRange('density', densityKgM3, 1e-3, 3e4, 'kg/m³');
  requireRange('specific heat', c, 1, 1e5, 'J/(kg K)');
  const line = typeof k === 'number' ? { at20: k, perKelvin: 0 } : k;
  requireRange('conductivity', line.at20, 1e-4, 1e4, 'W/(m K)');
  return {
    densityKgM3,
    conductivity: (celsius) => line.at20 + line.perKelvin * (celsius - 20),
    enthalpy: (celsius) => c * (celsius - 20),
    settle: (enthalpyJKg) => ({ celsius: 20 + enthalpyJKg / c, austenite: 0, capacityJKgK: c }),
    austeniteAtRest: () => 0,
  };
}

let sharedStructuralSteel: Material | undefined;

/**
 * Carbon steel after EN 1993-1-2, its transformation peak at 735 °C both on
 * heating and on cooling. Below 20 and above 1200 °C, where the standard is
 * silent, its end values are held.
 */
export function structuralSteel(): Material {
  sharedStructuralSteel ??= singleValued(heldEnthalpy);
  return sharedStructuralSteel;
}

function singleValued(enthalpyAt: (celsius: number) => number): Material {
  const table = risingTable(enthalpyAt);
  return {
    densityKgM3: STEEL_DENSITY_KG_M3,
    conductivity: heldConductivity,
    enthalpy: (celsius) => table.at(celsius),
    settle: (enthalpyJKg, memory) => {
      const celsius = table.inverse(enthalpyJKg, memory.celsius);
      return { celsius, austenite: 0, capacityJKgK: table.slopeAt(celsius) };
    },
    austeniteAtRest: () => 0,
  };
}

/** EN heat content with the end values of the specific heat held beyond 20 and 1200 °C. */
function heldEnthalpy(celsius: number): number {
  if (celsius < 20) return specificHeat(20) * (celsius - 20);
  if (celsius > 1200) return specificEnthalpy(1200) + 650 * (celsius - 1200);
  return specificEnthalpy(celsius);
}

export function heldConductivity(celsius: number): number {
  return conductivity(Math.min(1200, Math.max(20, celsius)));
}

/**
 * EN heat content with the peak between 600 and 900 °C cut down to the straight
 * line between its feet: what is left is the sensible heat alone. J/kg above 20 °C.
 */
export function sensibleEnthalpy(celsius: number): number {
  if (celsius <= 600) return heldEnthalpy(celsius);
  const at600 = specificEnthalpy(600);
  const c600 = specificHeat(600);
  const slope = (650 - c600) / 300;
  const within = Math.min(celsius, 900) - 600;
  const at = at600 + c600 * within + (slope * within ** 2) / 2;
  return celsius <= 900 ? at : at + 650 * (celsius - 900);
}

/** Refuses a share outside 0..1 by name; used by everything that accepts one. */
export function requireShare(name: string, share: number): number {
  if (share >= 0 && share <= 1) return share;
  throw new PhysicsError('bad-input', `${name} is ${share}, must lie between 0 and 1`, { name, share });
}
