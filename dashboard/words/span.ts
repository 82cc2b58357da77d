import { duration } from './time.ts';

/**
 * A measured stretch of time, to the second where seconds matter: "2 min 55 s" below ten minutes, then as
 * `duration` writes it. Negative counts as 0.
 */
export function span(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  if (whole < 60 || whole >= 600) return duration(whole);
  const rest = whole % 60;
  return rest === 0 ? `${whole / 60} min` : `${Math.floor(whole / 60)} min ${rest} s`;
}
