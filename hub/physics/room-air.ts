/**
 * A room as one well-mixed box of air: what a source adds and a draught removes.
 *
 * Real rooms mix badly; the mixing factor exists because of that, and no figure
 * from here says that a room's air is safe.
 */
import { PhysicsError, requireRange } from './errors.ts';

const PARTS_PER_MILLION = 1e6;
const SECONDS_PER_HOUR = 3600;

/** A room with a steady source and a steady exchange of air. */
export interface RoomAir {
  /** Above 0, up to 100 000 m³. */
  readonly volumeCubicMetres: number;
  /** Fresh air through the room, 0 or more. 0 is a sealed room. */
  readonly airCubicMetresPerHour: number;
  /** Pure gas released into the room, 0 or more. */
  readonly sourceCubicMetresPerHour: number;
  /** Concentration of the incoming air, 0 or more. */
  readonly backgroundPpm: number;
}

/**
 * Concentration after some time, ppm.
 *
 *     C(t) = Cb + (G/Q)(1 - e^(-Qt/V)) + (C0 - Cb) e^(-Qt/V)
 *
 * and a straight rise where Q is 0. Source: single-zone box model, textbook.
 *
 * @param initialPpm concentration at the start, 0 to 1e6
 * @param seconds elapsed time, 0 or more
 * @throws PhysicsError `out-of-range`
 */
export function roomPpmAfter(room: RoomAir, initialPpm: number, seconds: number): number {
  checkRoom(room);
  requireRange('Initial concentration', initialPpm, 0, PARTS_PER_MILLION, 'ppm');
  requireRange('Elapsed time', seconds, 0, Number.MAX_VALUE, 's');
  const hours = seconds / SECONDS_PER_HOUR;
  const exponent = (room.airCubicMetresPerHour * hours) / room.volumeCubicMetres;
  const kept = Math.exp(-exponent);
  // (1 - e^-x)/x tends to 1: a sealed room is the limit of the same formula, not another formula.
  const share = exponent === 0 ? 1 : -Math.expm1(-exponent) / exponent;
  const risePpm = (PARTS_PER_MILLION * room.sourceCubicMetresPerHour * hours) / room.volumeCubicMetres;
  return room.backgroundPpm + risePpm * share + (initialPpm - room.backgroundPpm) * kept;
}

/**
 * Concentration that the room settles at, ppm: Cb + G/Q.
 *
 * @throws PhysicsError `no-solution` for a sealed room with a source: it rises without end
 */
export function steadyRoomPpm(room: RoomAir): number {
  checkRoom(room);
  if (room.sourceCubicMetresPerHour === 0) return room.backgroundPpm;
  if (room.airCubicMetresPerHour === 0) {
    throw new PhysicsError('no-solution', 'A sealed room with a source never settles', { ...room });
  }
  return (
    room.backgroundPpm + (PARTS_PER_MILLION * room.sourceCubicMetresPerHour) / room.airCubicMetresPerHour
  );
}

function checkRoom(room: RoomAir): void {
  requireRange('Room volume', room.volumeCubicMetres, 0.1, 1e5, 'm³');
  requireRange('Air flow', room.airCubicMetresPerHour, 0, 1e7, 'm³/h');
  requireRange('Source', room.sourceCubicMetresPerHour, 0, 1e5, 'm³/h');
  requireRange('Background', room.backgroundPpm, 0, PARTS_PER_MILLION, 'ppm');
}

/** What has to be diluted, and to what. */
export interface DilutionNeed {
  readonly sourceCubicMetresPerHour: number;
  readonly targetPpm: number;
  readonly backgroundPpm: number;
  /** 1 is perfect mixing; 3 to 10 is the common habit. */
  readonly mixingFactor: number;
}

/**
 * Fresh air that holds a target, m³/h: K G / (Ctarget - Cb).
 *
 * @throws PhysicsError `no-solution` when the target is not above the background,
 *   `out-of-range` for a mixing factor outside 1 to 10 or a negative source
 */
export function airNeededCubicMetresPerHour(need: DilutionNeed): number {
  requireRange('Mixing factor', need.mixingFactor, 1, 10, '');
  requireRange('Source', need.sourceCubicMetresPerHour, 0, 1e5, 'm³/h');
  const room = need.targetPpm - need.backgroundPpm;
  if (!(room > 0)) {
    const message = `Target ${need.targetPpm} ppm is not above the background of ${need.backgroundPpm} ppm`;
    throw new PhysicsError('no-solution', message, { ...need });
  }
  return (need.mixingFactor * PARTS_PER_MILLION * need.sourceCubicMetresPerHour) / room;
}

/**
 * Time for the air to carry off a share of what is in the room, seconds,
 * with the source gone and perfect mixing: t = -ln(1 - share) / A.
 *
 * Source: CDC MMWR 43 (RR-13), 1994, table S3-1. That source multiplies by up
 * to 10 where air is distributed badly.
 *
 * @param removedShare above 0, below 1
 * @param airChangesPerHour above 0, up to 1000
 * @throws PhysicsError `out-of-range`
 */
export function removalSeconds(removedShare: number, airChangesPerHour: number): number {
  requireRange('Removed share', removedShare, 1e-9, 1 - 1e-9, '');
  requireRange('Air changes', airChangesPerHour, 1e-6, 1000, '1/h');
  return (-Math.log1p(-removedShare) / airChangesPerHour) * SECONDS_PER_HOUR;
}
