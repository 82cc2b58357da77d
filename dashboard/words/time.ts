/** How instants and durations are written. The time zone is the screen's, unless one is given. */

const SECONDS_PER_MINUTE = 60;
const SECONDS_PER_HOUR = 3600;

/** "14:03" on a 24-hour clock. */
export function timeOfDay(atMs: number, timeZone?: string): string {
  return part(atMs, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }, timeZone);
}

/** "14:03:27" on a 24-hour clock. */
export function timeOfDaySeconds(atMs: number, timeZone?: string): string {
  return part(atMs, { hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' }, timeZone);
}

/** "7 Mar 2025". */
export function day(atMs: number, timeZone?: string): string {
  return part(atMs, { day: 'numeric', month: 'short', year: 'numeric' }, timeZone);
}

/** "7 Mar 2025, 14:03". */
export function dayAndTime(atMs: number, timeZone?: string): string {
  return `${day(atMs, timeZone)}, ${timeOfDay(atMs, timeZone)}`;
}

/** The time alone when it is of the same day as `nowMs`, else with its day: an old value must not look new. */
export function since(atMs: number, nowMs: number, timeZone?: string): string {
  return day(atMs, timeZone) === day(nowMs, timeZone)
    ? timeOfDay(atMs, timeZone)
    : dayAndTime(atMs, timeZone);
}

/** A duration in words, rounded to what matters: "45 s", "11 min", "1 h 20 min". Negative counts as 0. */
export function duration(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  if (whole < SECONDS_PER_MINUTE) return `${whole} s`;
  const minutes = Math.round(whole / SECONDS_PER_MINUTE);
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  const hours = Math.floor(minutes / 60);
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** A running clock: "12:20", "1:02:20". Negative counts as 0. */
export function clockDuration(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const pad = (value: number) => String(value).padStart(2, '0');
  const hours = Math.floor(whole / SECONDS_PER_HOUR);
  const minutes = Math.floor((whole % SECONDS_PER_HOUR) / SECONDS_PER_MINUTE);
  const tail = `${pad(minutes)}:${pad(whole % SECONDS_PER_MINUTE)}`;
  return hours > 0 ? `${hours}:${tail}` : tail;
}

function part(atMs: number, options: Intl.DateTimeFormatOptions, timeZone: string | undefined): string {
  const zone = timeZone === undefined ? {} : { timeZone };
  return new Intl.DateTimeFormat('en-GB', { ...options, ...zone }).format(atMs);
}
