/**
 * Hollomon-Jaffe: temper time and temperature as one number,
 * `P = T (C + log10 t)` with T in kelvin and t in HOURS.
 *
 * A parameter means nothing without its constant C and its time unit. C = 20,
 * often copied, is wrong for high-carbon steel: 14 to 16 fits the 1945 data.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import type { Provenance } from './estimate.ts';

const KELVIN = 273.15;

export const HOLLOMON_JAFFE: Provenance = {
  standing: 'published-secondary',
  source:
    'Hollomon & Jaffe, Trans. AIME 162 (1945) 223-249; constant 21.3 - 5.8 %C for hours as given by a gear process-modelling paper, in transcription',
};

/**
 * The constant C for time in hours: `21.3 - 5.8 (%C)`. (The original 17.7 - 5.8
 * is for seconds; log10 3600 = 3.556 is the difference.)
 *
 * @param carbonPercent 0 to 1.6 mass %
 * @throws PhysicsError `out-of-range`
 */
export function hollomonJaffeConstant(carbonPercent: number): number {
  return 21.3 - 5.8 * requireRange('Carbon', carbonPercent, 0, 1.6, '%');
}

/**
 * The parameter P, in kelvin (log hours); not divided by 1000.
 *
 * @param celsius -50 to 750 °C
 * @param hours above 0, to 100 000 h
 * @param constant C for hours, 5 to 30
 * @throws PhysicsError `out-of-range`
 */
export function hollomonJaffe(celsius: number, hours: number, constant: number): number {
  const kelvin = requireRange('Temperature', celsius, -50, 750, '°C') + KELVIN;
  const time = requireRange('Time', hours, Number.MIN_VALUE, 1e5, 'h');
  return kelvin * (requireRange('Hollomon-Jaffe constant', constant, 5, 30, '') + Math.log10(time));
}

/**
 * Hours at a temperature that give the parameter P: the inverse of {@link hollomonJaffe}.
 *
 * @throws PhysicsError `out-of-range`
 */
export function hoursForParameter(parameter: number, celsius: number, constant: number): number {
  const kelvin = requireRange('Temperature', celsius, -50, 750, '°C') + KELVIN;
  return 10 ** (parameter / kelvin - constant);
}

/** A temperature reading of the piece: epoch milliseconds UTC and °C. */
export interface HeatReading {
  readonly atMs: number;
  readonly celsius: number;
}

/** What a measured temper comes to. */
export interface EquivalentTemper {
  readonly parameter: number;
  readonly constant: number;
  /** Temperature that the equivalent time is stated for, °C: the peak unless asked otherwise. */
  readonly referenceCelsius: number;
  readonly equivalentHours: number;
  /** Longest stretch between two readings, ms: nothing is known of the steel inside it. */
  readonly longestGapMs: number;
}

/** Temperature step of the integration, °C. */
const STEP_CELSIUS = 1;
const MS_PER_HOUR = 3_600_000;

/**
 * Carries the parameter over one stretch of a record, straight line between its
 * ends. State in, state out, so that a live judge can call it reading by
 * reading and a replay gives the same number.
 *
 * Additivity as Scheil assumed it: what has been tempered so far counts as the
 * time that would have done it at the present temperature.
 *
 * @param parameter P so far, or null before the first stretch
 * @throws PhysicsError `bad-input` when time does not move forward,
 *   `out-of-range` for a temperature outside -50 to 750 °C
 */
export function advanceTemper(
  parameter: number | null,
  from: HeatReading,
  to: HeatReading,
  constant: number,
): number {
  const elapsedMs = to.atMs - from.atMs;
  if (!(elapsedMs > 0)) {
    throw new PhysicsError('bad-input', 'Readings must move forward in time', {
      from: from.atMs,
      to: to.atMs,
    });
  }
  requireRange('Temperature', from.celsius, -50, 750, '°C');
  requireRange('Temperature', to.celsius, -50, 750, '°C');
  const rise = to.celsius - from.celsius;
  const steps = Math.max(1, Math.ceil(Math.abs(rise) / STEP_CELSIUS));
  const hours = elapsedMs / MS_PER_HOUR / steps;
  let state = parameter ?? Number.NEGATIVE_INFINITY;
  for (let step = 0; step < steps; step += 1) {
    const kelvin = from.celsius + (rise * (step + 0.5)) / steps + KELVIN;
    const before = 10 ** (state / kelvin - constant);
    // Cold steel hardly adds: the sum rounds to `before`, and the state must not drift by rounding.
    state = Math.max(state, kelvin * (constant + Math.log10(before + hours)));
  }
  return state;
}

/**
 * Integrates a measured temper.
 *
 * @param readings of the piece itself, in time order, two at least
 * @param constant see {@link hollomonJaffeConstant}
 * @param referenceCelsius state the time for this temperature instead of the peak
 * @throws PhysicsError `bad-input` for fewer than two readings or time running
 *   back, `out-of-range` for temperatures outside -50 to 750 °C
 */
export function equivalentTemper(
  readings: readonly HeatReading[],
  constant: number,
  referenceCelsius?: number,
): EquivalentTemper {
  const first = readings[0];
  if (first === undefined || readings.length < 2) {
    throw new PhysicsError('bad-input', 'A temper needs two readings at least', { count: readings.length });
  }
  let parameter: number | null = null;
  let [previous, peak, longestGapMs] = [first, first.celsius, 0];
  for (const reading of readings.slice(1)) {
    parameter = advanceTemper(parameter, previous, reading, constant);
    peak = Math.max(peak, reading.celsius);
    longestGapMs = Math.max(longestGapMs, reading.atMs - previous.atMs);
    previous = reading;
  }
  const reference = referenceCelsius ?? peak;
  const total = parameter ?? Number.NEGATIVE_INFINITY;
  const equivalentHours = hoursForParameter(total, reference, constant);
  return { parameter: total, constant, referenceCelsius: reference, equivalentHours, longestGapMs };
}
