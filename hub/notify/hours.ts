import type { NotifyHours } from '../contract/notify.ts';

/** The hours of a rule on the shop's own clock. */

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MINUTES_PER_DAY = 1440;
const clocks = new Map<string, Intl.DateTimeFormat>();

/** Making a formatter is slow; a shop has one zone. */
function clockOf(zone: string): Intl.DateTimeFormat {
  const known = clocks.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    weekday: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  clocks.set(zone, made);
  return made;
}

/** ISO weekday (1 Monday) and minute of the day at `at`, epoch ms, on the clock of `zone` (IANA name). */
export function localTime(at: number, zone: string): { readonly day: number; readonly minute: number } {
  const parts = Object.fromEntries(
    clockOf(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, value]),
  );
  const minute = Number(parts.hour) * 60 + Number(parts.minute);
  return { day: DAYS.indexOf(parts.weekday ?? '') + 1, minute };
}

function minutesOf(timeOfDay: string): number {
  const [hours = '0', minutes = '0'] = timeOfDay.split(':');
  return Number(hours) * 60 + Number(minutes);
}

/**
 * True inside the hours. Hours that end at or before their beginning go on past midnight and belong to the day on
 * which they began; `from` equal to `to` is a whole day.
 */
export function isWithinHours(hours: NotifyHours, at: number, zone: string): boolean {
  const { day, minute } = localTime(at, zone);
  const from = minutesOf(hours.from);
  const to = minutesOf(hours.to);
  const end = to > from ? to : to + MINUTES_PER_DAY;
  const yesterday = day === 1 ? 7 : day - 1;
  const today = hours.days.includes(day) && minute >= from && minute < end;
  const stillYesterdays = hours.days.includes(yesterday) && minute + MINUTES_PER_DAY < end;
  return today || stillYesterdays;
}
