/**
 * What surrounds a piece: heat flows by convection from the gas or liquid and
 * by radiation from the walls.
 *
 *   q = h (Tsurroundings - Tsurface) + eps sigma (Twalls⁴ - Tsurface⁴), kelvin in the second term
 *
 * Walls much larger than the piece: eps is the emissivity of the piece
 * (oxidised steel 0.8 to 0.9, bright steel 0.1 to 0.3; from memory: Incropera).
 */
import { PhysicsError, requireRange } from '../errors.ts';

/** W/(m² K⁴), CODATA 2018. */
export const STEFAN_BOLTZMANN = 5.670374419e-8;
const KELVIN = 273.15;

/** Coldest and hottest temperature that the models of this folder accept, °C. */
export const COLDEST_CELSIUS = -40;
export const HOTTEST_CELSIUS = 1350;

/** Film coefficient, W/(m² K): a number, or straight pieces over surface temperature. */
export type Film = number | readonly FilmPoint[];

export interface FilmPoint {
  readonly surfaceCelsius: number;
  readonly wM2K: number;
}

export interface Exposure {
  /** Chamber, air or bath at the end of the step, °C. */
  readonly surroundingsCelsius: number;
  /** The same at the start of the step; straight between. Default: as at the end. */
  readonly surroundingsWereCelsius?: number;
  /** What the surface radiates to, °C. Default: the surroundings. */
  readonly wallsCelsius?: number;
  /** Effective emissivity, 0 to 1; 0 for a liquid bath. */
  readonly emissivity: number;
  readonly film: Film;
}

/**
 * Heat flux into the surface, W/m².
 *
 * @param surroundingsCelsius the gas or liquid at this moment
 */
export function fluxInto(exposure: Exposure, surroundingsCelsius: number, surfaceCelsius: number): number {
  const walls = (exposure.wallsCelsius ?? surroundingsCelsius) + KELVIN;
  const surface = surfaceCelsius + KELVIN;
  const radiation = exposure.emissivity * STEFAN_BOLTZMANN * (walls ** 4 - surface ** 4);
  return filmAt(exposure.film, surfaceCelsius) * (surroundingsCelsius - surfaceCelsius) + radiation;
}

/** How fast {@link fluxInto} falls as the surface warms, W/(m² K), the film taken as it is. */
export function fluxSlope(exposure: Exposure, surfaceCelsius: number): number {
  const radiation = 4 * exposure.emissivity * STEFAN_BOLTZMANN * (surfaceCelsius + KELVIN) ** 3;
  return filmAt(exposure.film, surfaceCelsius) + radiation;
}

/**
 * Radiation as a film coefficient, W/(m² K): eps sigma (Tf² + Ts²)(Tf + Ts).
 *
 * @throws PhysicsError `out-of-range` when emissivity is outside 0 to 1 or a
 *   temperature outside -40 to 1350 °C
 */
export function radiativeCoefficient(
  emissivity: number,
  surroundingsCelsius: number,
  surfaceCelsius: number,
): number {
  requireRange('emissivity', emissivity, 0, 1, '');
  const from = requireTemperature('surroundings', surroundingsCelsius) + KELVIN;
  const to = requireTemperature('surface', surfaceCelsius) + KELVIN;
  return emissivity * STEFAN_BOLTZMANN * (from ** 2 + to ** 2) * (from + to);
}

/** Film coefficient at a surface temperature; the ends of the curve are held. */
export function filmAt(film: Film, surfaceCelsius: number): number {
  if (typeof film === 'number') return film;
  let before = film[0];
  for (const point of film) {
    if (point.surfaceCelsius >= surfaceCelsius) return between(before ?? point, point, surfaceCelsius);
    before = point;
  }
  return before?.wM2K ?? 0;
}

function between(a: FilmPoint, b: FilmPoint, celsius: number): number {
  const span = b.surfaceCelsius - a.surfaceCelsius;
  return span > 0 ? a.wM2K + ((b.wM2K - a.wM2K) * (celsius - a.surfaceCelsius)) / span : b.wM2K;
}

/** Refuses a temperature outside -40 to 1350 °C by name. */
export function requireTemperature(name: string, celsius: number): number {
  return requireRange(`${name} temperature`, celsius, COLDEST_CELSIUS, HOTTEST_CELSIUS, '°C');
}

/**
 * Refuses an exposure that makes no physical sense.
 *
 * @throws PhysicsError `out-of-range` or `bad-input` naming the field
 */
export function checkExposure(exposure: Exposure): Exposure {
  requireTemperature('surroundings', exposure.surroundingsCelsius);
  requireTemperature(
    'earlier surroundings',
    exposure.surroundingsWereCelsius ?? exposure.surroundingsCelsius,
  );
  requireTemperature('walls', exposure.wallsCelsius ?? exposure.surroundingsCelsius);
  requireRange('emissivity', exposure.emissivity, 0, 1, '');
  if (typeof exposure.film === 'number') requireRange('film coefficient', exposure.film, 0, 1e5, 'W/(m² K)');
  else checkFilmCurve(exposure.film);
  return exposure;
}

function checkFilmCurve(points: readonly FilmPoint[]): void {
  if (points.length === 0) throw new PhysicsError('bad-input', 'film curve has no points');
  let last = Number.NEGATIVE_INFINITY;
  for (const { surfaceCelsius, wM2K } of points) {
    requireRange('film coefficient', wM2K, 0, 1e5, 'W/(m² K)');
    if (!(surfaceCelsius > last)) {
      throw new PhysicsError('bad-input', 'film curve must rise in surface temperature', { surfaceCelsius });
    }
    last = surfaceCelsius;
  }
}
