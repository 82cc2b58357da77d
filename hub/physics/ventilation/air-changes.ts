/**
 * What a measured rate of air changes means: flow, time until below a limit,
 * and the largest source that the room carries under it.
 *
 * Real rooms mix badly. The mixing factor (1 perfect, 3 to 10 by common habit,
 * up to 10 in CDC MMWR 43 RR-13) multiplies times and divides sources. A source
 * that is carried is no statement that the air is good.
 */
import { PhysicsError, requireRange } from '../errors.ts';

const HOUR_SECONDS = 3600;
const PARTS_PER_MILLION = 1e6;

/** Two readings of a fall. */
export interface TwoPointDecay {
  readonly firstPpm: number;
  readonly lastPpm: number;
  readonly backgroundPpm: number;
  /** Time between them, s, above 0. */
  readonly seconds: number;
  /** Standard uncertainty of each reading, ppm; 0 where not known. */
  readonly firstErrorPpm: number;
  readonly lastErrorPpm: number;
}

/**
 * Air changes an hour from two readings: ln((C0 - Cb)/(Ct - Cb))/t, and its standard uncertainty.
 *
 * Source: environmental-engineering texts; the uncertainty is first-order propagation. Readings minutes apart
 * give wrong rates: fitDecay is steadier.
 *
 * @throws PhysicsError `no-solution` unless first > last > background, `out-of-range`
 */
export function twoPointAirChanges(decay: TwoPointDecay): {
  readonly perHour: number;
  readonly error: number;
} {
  const hours = requireRange('Time', decay.seconds, 1e-3, 1e9, 's') / HOUR_SECONDS;
  const [first, last] = [decay.firstPpm - decay.backgroundPpm, decay.lastPpm - decay.backgroundPpm];
  if (!(first > last && last > 0)) {
    throw new PhysicsError('no-solution', 'A fall goes from first to last and stays above the background', {
      ...decay,
    });
  }
  const error = Math.hypot(decay.firstErrorPpm / first, decay.lastErrorPpm / last) / hours;
  return { perHour: Math.log(first / last) / hours, error };
}

/**
 * Air flow of a room, m³/h, from the time in which an excess halves: 0.693 V / t.
 *
 * Source: industrial-hygiene teaching note.
 *
 * @param volumeCubicMetres 0.1 to 100 000 m³
 * @param halfLifeSeconds above 0
 * @throws PhysicsError `out-of-range`
 */
export function halfLifeFlowCubicMetresPerHour(volumeCubicMetres: number, halfLifeSeconds: number): number {
  requireRange('Room volume', volumeCubicMetres, 0.1, 1e5, 'm³');
  requireRange('Half-life', halfLifeSeconds, 1, 1e9, 's');
  return (Math.LN2 * volumeCubicMetres * HOUR_SECONDS) / halfLifeSeconds;
}

/** A fall that is under way. */
export interface FallingAir {
  readonly ppmNow: number;
  readonly limitPpm: number;
  readonly backgroundPpm: number;
  /** Above 0. Take the low end of a measured range: it gives the longer time. */
  readonly airChangesPerHour: number;
  /** 1 to 10. */
  readonly mixingFactor: number;
}

/**
 * Seconds until the level has fallen to a limit with the source gone; 0 when it is there already.
 *
 * A time to wait, not a time to go in: what counts is the reading then.
 *
 * @throws PhysicsError `no-solution` when the limit is not above the background, `out-of-range`
 */
export function secondsUntilBelow(air: FallingAir): number {
  requireRange('Air changes', air.airChangesPerHour, 1e-6, 1000, '1/h');
  requireRange('Mixing factor', air.mixingFactor, 1, 10, '');
  requireRange('Level', air.ppmNow, 0, PARTS_PER_MILLION, 'ppm');
  requireAboveBackground(air.limitPpm, air.backgroundPpm);
  if (air.ppmNow <= air.limitPpm) return 0;
  const fall = Math.log((air.ppmNow - air.backgroundPpm) / (air.limitPpm - air.backgroundPpm));
  return (air.mixingFactor * fall * HOUR_SECONDS) / air.airChangesPerHour;
}

/** A room and the level that it must not pass. */
export interface CarryingRoom {
  readonly volumeCubicMetres: number;
  /** 0 or more. Take the low end of a measured range: it gives the smaller source. */
  readonly airChangesPerHour: number;
  readonly limitPpm: number;
  readonly backgroundPpm: number;
  /** 1 to 10. */
  readonly mixingFactor: number;
}

/**
 * Largest steady source, m³/h of pure gas, that keeps the room at the limit: A V (L - Cb) / K.
 *
 * @throws PhysicsError `no-solution` when the limit is not above the background, `out-of-range`
 */
export function highestSourceCubicMetresPerHour(room: CarryingRoom): number {
  requireRange('Room volume', room.volumeCubicMetres, 0.1, 1e5, 'm³');
  requireRange('Air changes', room.airChangesPerHour, 0, 1000, '1/h');
  requireRange('Mixing factor', room.mixingFactor, 1, 10, '');
  requireAboveBackground(room.limitPpm, room.backgroundPpm);
  const flow = room.airChangesPerHour * room.volumeCubicMetres;
  return (flow * (room.limitPpm - room.backgroundPpm)) / (PARTS_PER_MILLION * room.mixingFactor);
}

function requireAboveBackground(limitPpm: number, backgroundPpm: number): void {
  requireRange('Background', backgroundPpm, 0, PARTS_PER_MILLION, 'ppm');
  if (limitPpm > backgroundPpm && limitPpm <= PARTS_PER_MILLION) return;
  const message = `Limit ${limitPpm} ppm is not above the background of ${backgroundPpm} ppm`;
  throw new PhysicsError('no-solution', message, { limitPpm, backgroundPpm });
}
