/** A temper as planned (one hold) or as measured (a curve), asked for its parameter. */
import { equivalentTemper, type HeatReading, hollomonJaffe, hoursForParameter } from './hollomon-jaffe.ts';

export type TemperHistory =
  | { readonly kind: 'hold'; readonly celsius: number; readonly hours: number }
  | { readonly kind: 'curve'; readonly readings: readonly HeatReading[] };

/** Hollomon-Jaffe parameter of a temper for a constant (hours). Errors as {@link hollomonJaffe}. */
export function temperParameter(history: TemperHistory, constant: number): number {
  if (history.kind === 'hold') return hollomonJaffe(history.celsius, history.hours, constant);
  return equivalentTemper(history.readings, constant).parameter;
}

/** Highest temperature reached, °C. */
export function peakCelsius(history: TemperHistory): number {
  if (history.kind === 'hold') return history.celsius;
  return history.readings.reduce(
    (peak, reading) => Math.max(peak, reading.celsius),
    Number.NEGATIVE_INFINITY,
  );
}

/** The hold at the peak temperature that does the same, hours. */
export function equivalentHoursAtPeak(history: TemperHistory, constant: number): number {
  if (history.kind === 'hold') return history.hours;
  return hoursForParameter(temperParameter(history, constant), peakCelsius(history), constant);
}
