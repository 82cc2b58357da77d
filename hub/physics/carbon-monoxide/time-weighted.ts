/**
 * Time-weighted means by the convention of the body that set the limit.
 *
 * Conventions are not mixed: a sum divided by 8 h belongs to a limit for 8 h,
 * whatever the length of the day; see extended-shift.ts for the other one.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import type { TwaConvention } from './limits.ts';

const HOUR_MS = 3_600_000;

/** Time at one measured level. */
export interface ExposurePart {
  /** 0 to 1e6. */
  readonly ppm: number;
  /** 0 to 24 h. */
  readonly hours: number;
}

/**
 * What a running sum over the day is divided by, ms.
 *
 * @param elapsedMs since the day's work began, 0 or more
 */
export function twaDivisorMs(convention: TwaConvention, elapsedMs: number): number {
  switch (convention.kind) {
    case 'sum-over':
      return convention.hours * HOUR_MS;
    case 'mean-of-shift':
      return Math.min(Math.max(elapsedMs, convention.leastHours * HOUR_MS), convention.mostHours * HOUR_MS);
    default:
      return convention satisfies never;
  }
}

/**
 * Mean of a day by a convention, ppm: for OSHA sum(Ci Ti)/8.
 *
 * Source: 29 CFR 1910.1000(d)(1).
 *
 * @throws PhysicsError `bad-input` without parts, `out-of-range`
 */
export function timeWeightedPpm(convention: TwaConvention, parts: readonly ExposurePart[]): number {
  if (parts.length === 0) throw new PhysicsError('bad-input', 'a mean needs at least one part of a day');
  let ppmHours = 0;
  let hours = 0;
  for (const part of parts) {
    requireRange('Carbon monoxide', part.ppm, 0, 1e6, 'ppm');
    requireRange('Length of a part', part.hours, 0, 24, 'h');
    ppmHours += part.ppm * part.hours;
    hours += part.hours;
  }
  return (ppmHours * HOUR_MS) / twaDivisorMs(convention, hours * HOUR_MS);
}

/** One agent of a mixture and its limit, in the same unit. */
export interface MixturePart {
  readonly level: number;
  readonly limit: number;
}

/**
 * Sum of shares of the limits, which shall not exceed 1, for agents that act on the same organ.
 *
 * Source: 29 CFR 1910.1000(d)(2). Low oxygen and CO2 are not formally in this
 * sum; they stay alarms of their own.
 *
 * @throws PhysicsError `out-of-range` for a limit that is not positive or a negative level
 */
export function mixtureShare(parts: readonly MixturePart[]): number {
  return parts.reduce((sum, { level, limit }) => {
    requireRange('Level', level, 0, Number.MAX_VALUE, '');
    requireRange('Limit', limit, Number.MIN_VALUE, Number.MAX_VALUE, '');
    return sum + level / limit;
  }, 0);
}

/** What a worn instrument shows after a row of one-minute means. */
export interface InstrumentReading {
  /** Sum of the minute means / 480: never falls in the first 8 h, passes the peak after longer ones. */
  readonly twaPpm: number;
  /** Mean of the last 15 minutes, and the highest so far. */
  readonly stelPpm: number;
  readonly highestStelPpm: number;
}

const DAY_MINUTES = 480;
const STEL_MINUTES = 15;

/**
 * Instrument convention: one-minute means; time switched off counts as zero.
 *
 * For comparing with what an instrument shows, never for judging: exposure.ts
 * does not count silence as clean air. Source: a gas-monitor technical note.
 *
 * @param minuteMeans ppm, in order of time
 * @throws PhysicsError `out-of-range`
 */
export function instrumentReading(minuteMeans: readonly number[]): InstrumentReading {
  let sum = 0;
  let short = 0;
  let highestStelPpm = 0;
  for (const [minute, ppm] of minuteMeans.entries()) {
    requireRange('Minute mean', ppm, 0, 1e6, 'ppm');
    sum += ppm;
    short += ppm - (minuteMeans[minute - STEL_MINUTES] ?? 0);
    highestStelPpm = Math.max(highestStelPpm, short / STEL_MINUTES);
  }
  return { twaPpm: sum / DAY_MINUTES, stelPpm: short / STEL_MINUTES, highestStelPpm };
}
