/** Published and computed values for heat in steel, each beside its source. */

/**
 * EN 1993-1-2:2005 clause 3.4.1.2, specific heat J/(kg K) at °C: worked out from
 * the standard's equations, as printed in a structural-fire article.
 */
export const EN_SPECIFIC_HEAT: readonly (readonly [celsius: number, jKgK: number])[] = [
  [20, 439.8],
  [100, 487.6],
  [200, 529.8],
  [400, 605.9],
  [599.999, 759.9],
  [600, 760.2],
  [650, 813.8],
  [700, 1008.2],
  [720, 1388.3],
  [730, 2291.2],
  [735, 5000],
  [740, 2525],
  [750, 1482.9],
  [800, 803.3],
  [850, 694.7],
  [900, 650],
];

/** EN 1993-1-2:2005 clause 3.4.1.3, conductivity W/(m K) at °C. */
export const EN_CONDUCTIVITY: readonly (readonly [celsius: number, wMK: number])[] = [
  [20, 53.33],
  [400, 40.68],
  [600, 34.02],
  [735, 29.52],
  [800, 27.3],
];

/** EN 1993-1-2:2005 clause 3.4.1.1, relative elongation at °C. */
export const EN_ELONGATION: readonly (readonly [celsius: number, elongation: number])[] = [
  [100, 0.001],
  [400, 0.0052],
  [700, 0.01012],
];

/** Integrals of EN specific heat, kJ/kg, computed from the standard's equations by quadrature. */
export const EN_ENTHALPY: readonly (readonly [from: number, to: number, kJKg: number])[] = [
  [20, 200, 88.2],
  [20, 600, 335.7],
  [20, 735, 475.4],
  [20, 800, 561.6],
  [20, 850, 598.6],
  [20, 900, 632.1],
  [700, 800, 142.5],
];

/** k / (rho c) of EN steel, m²/s. */
export const EN_DIFFUSIVITY: readonly (readonly [celsius: number, m2s: number])[] = [
  [20, 1.545e-5],
  [400, 8.55e-6],
  [850, 5.01e-6],
];

/** eps sigma (Tf² + Ts²)(Tf + Ts), W/(m² K), computed from the definition. */
export const RADIATIVE: readonly (readonly [eps: number, from: number, to: number, wM2K: number])[] = [
  [0.8, 800, 20, 76.7],
  [0.8, 800, 400, 127.1],
  [0.8, 800, 700, 194.8],
  [0.8, 815, 800, 229],
  [0.8, 200, 20, 10.8],
  [0.8, 200, 190, 18.6],
  [0.9, 850, 800, 270.5],
];

/** First eigenvalue and amplitude; from memory: Çengel table 4-2, recomputed to the printed digits. */
export const ONE_TERM: readonly (readonly [bi: number, plate: Pair, bar: Pair, sphere: Pair])[] = [
  [0.01, [0.0998, 1.0017], [0.1412, 1.0025], [0.173, 1.003]],
  [0.1, [0.3111, 1.0161], [0.4417, 1.0246], [0.5423, 1.0298]],
  [0.2, [0.4328, 1.0311], [0.617, 1.0483], [0.7593, 1.0592]],
  [0.5, [0.6533, 1.0701], [0.9408, 1.1143], [1.1656, 1.1441]],
  [1, [0.8603, 1.1191], [1.2558, 1.2071], [1.5708, 1.2732]],
  [2, [1.0769, 1.1785], [1.5994, 1.3384], [2.0288, 1.4793]],
  [5, [1.3138, 1.2402], [1.9898, 1.5029], [2.5704, 1.787]],
  [10, [1.4289, 1.262], [2.1795, 1.5677], [2.8363, 1.9249]],
  [100, [1.5552, 1.2731], [2.3809, 1.6015], [3.1102, 1.999]],
];
type Pair = readonly [zeta: number, amplitude: number];

/**
 * Minutes for a lumped plate, both faces, EN 1993 c(T), rho 7850, eps 0.8,
 * h 10, in a furnace of constant temperature: computed by quadrature.
 */
export const HEATING_MINUTES: readonly (readonly [mm: number, to805in815: number, to195in200: number])[] = [
  [3, 4.1, 13.5],
  [6, 8.2, 27],
  [12, 16.3, 54.1],
  [25, 34, 112.6],
];

/**
 * Still-air cooling of lumped plates, both faces: eps 0.8, h 10, c 650, rho 7850,
 * no latent heat, air at 20 °C: °C/s at 900 to 500 °C, and t8/5 in s. Computed.
 */
export const STILL_AIR: readonly (readonly [mm: number, rates: readonly number[], t85: number])[] = [
  [3, [12.3, 8.8, 6.2, 4.2, 2.7], 63],
  [6, [6.2, 4.4, 3.1, 2.1, 1.35], 127],
  [12, [3.1, 2.2, 1.5, 1, 0.68], 254],
  [25, [1.5, 1.06, 0.74, 0.5, 0.32], 528],
  [50, [0.74, 0.53, 0.37, 0.25, 0.16], 1056],
];
