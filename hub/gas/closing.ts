/** Whether an instant lies after the shop has closed. */

/** From closing on for so long it counts as after closing: a night, and then a new day. Common practice, no source. */
const NIGHT_MINUTES = 10 * 60;
const DAY_MINUTES = 24 * 60;

/** The minute of the day on the wall clock of a place. */
export type MinuteOfDay = (at: number) => number;

/** @param timeZone IANA name; null: the zone of this machine */
export function wallClock(timeZone: string | null): MinuteOfDay {
  const zone = timeZone === null ? {} : { timeZone };
  const format = new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    ...zone,
  });
  return (at) => minutesOf(format.format(at)) ?? 0;
}

/** "18:30" as minutes of the day; null when it is no time of day. */
function minutesOf(text: string): number | null {
  const [, hours, minutes] = /^(\d{2}):(\d{2})$/.exec(text) ?? [];
  return hours === undefined || minutes === undefined ? null : Number(hours) * 60 + Number(minutes);
}

/** null: the shop has no closing time. */
export function afterClosing(closingTime: string | null, clock: MinuteOfDay, at: number): boolean | null {
  const closes = closingTime === null ? null : minutesOf(closingTime);
  if (closes === null) return null;
  return (clock(at) - closes + DAY_MINUTES) % DAY_MINUTES < NIGHT_MINUTES;
}

/** Seconds until it closes; null: it has no closing time, or it is after closing. */
export function secondsToClosing(closingTime: string | null, clock: MinuteOfDay, at: number): number | null {
  const closes = closingTime === null ? null : minutesOf(closingTime);
  if (closes === null || afterClosing(closingTime, clock, at) === true) return null;
  return ((closes - clock(at) + DAY_MINUTES) % DAY_MINUTES) * 60;
}
