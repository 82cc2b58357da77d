import { type Outcome, quoted, refused, understood } from './outcome.ts';

export type TimeFormat = 'epoch-seconds' | 'epoch-milliseconds' | 'iso8601';

/** The last instant that a Date can hold (ECMAScript), epoch milliseconds. */
const LAST_INSTANT_MS = 8_640_000_000_000_000;
/** An offset or Z is required: a time without a zone is a guess. */
const ISO_8601 = /^(\d{4})-(\d{2})-(\d{2})T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:\d{2})$/;

/** An instant in epoch milliseconds UTC, rounded to a whole one. Refusal: `bad-time`. */
export function readInstant(stated: unknown, format: TimeFormat): Outcome<number> {
  switch (format) {
    case 'epoch-seconds':
      return fromNumber(stated, 1000);
    case 'epoch-milliseconds':
      return fromNumber(stated, 1);
    case 'iso8601':
      return fromIso8601(stated);
    default:
      return format satisfies never;
  }
}

/** Unix seconds, as an instant that can be kept. Refusal: `bad-time`. */
export function fromUnixSeconds(seconds: number): Outcome<number> {
  return fromNumber(seconds, 1000);
}

function fromNumber(stated: unknown, msPerUnit: number): Outcome<number> {
  if (typeof stated !== 'number') return refused('bad-time', `the time is ${quoted(stated)}, not a number`);
  const at = Math.round(stated * msPerUnit);
  if (at >= 0 && at <= LAST_INSTANT_MS) return understood(at);
  return refused('bad-time', `the time ${stated} is before 1970 or beyond what a date can hold`);
}

function fromIso8601(stated: unknown): Outcome<number> {
  const parts = typeof stated === 'string' ? ISO_8601.exec(stated) : null;
  if (!parts || typeof stated !== 'string') {
    return refused('bad-time', `the time is ${quoted(stated)}, not an ISO 8601 instant with Z or an offset`);
  }
  const [, year, month, day] = parts.map(Number);
  const at = isCalendarDay(year, month, day) ? Date.parse(stated) : Number.NaN;
  if (at >= 0) return understood(at);
  return refused('bad-time', `${quoted(stated)} is no instant since 1970`);
}

/** Date.parse lets 31 February roll over into March. */
function isCalendarDay(year = 0, month = 0, day = 0): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}
