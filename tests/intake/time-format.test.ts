import { describe, expect, test } from 'vitest';
import { readInstant, type TimeFormat } from '../../hub/intake/time-format.ts';

function read(stated: unknown, format: TimeFormat): number | string {
  const instant = readInstant(stated, format);
  return instant.ok ? instant.value : instant.reason;
}

/** RFC 3339 section 5.8: the first two examples name the instants below, both in UTC. */
describe('ISO 8601 instants', () => {
  test.each([
    ['1985-04-12T23:20:50.52Z', Date.UTC(1985, 3, 12, 23, 20, 50, 520)],
    ['1996-12-19T16:39:57-08:00', Date.UTC(1996, 11, 20, 0, 39, 57)],
    ['2024-02-29T12:00Z', Date.UTC(2024, 1, 29, 12)],
  ])('%s is read', (text, at) => {
    expect(read(text, 'iso8601')).toBe(at);
  });

  test.each<[unknown, string]>([
    ['2024-05-01T12:00:00', 'no zone'],
    ['2024-05-01', 'no time of day'],
    ['2023-02-29T12:00:00Z', 'no such day'],
    ['2024-13-01T12:00:00Z', 'no such month'],
    ['2024-05-01T25:00:00Z', 'no such hour'],
    ['1969-12-31T23:59:59Z', 'before 1970'],
    ['May 1 2024 12:00 GMT', 'another format'],
    [1_714_564_800, 'a number'],
    [null, 'nothing'],
  ])('%s is refused: %s', (stated) => {
    expect(read(stated, 'iso8601')).toBe('bad-time');
  });
});

describe('epoch numbers', () => {
  test('seconds may have a fraction; milliseconds are rounded to whole ones', () => {
    expect(read(1_714_564_800.25, 'epoch-seconds')).toBe(1_714_564_800_250);
    expect(read(1_714_564_800_000.4, 'epoch-milliseconds')).toBe(1_714_564_800_000);
  });

  test.each([['1714564800'], [null], [Number.NaN], [Number.POSITIVE_INFINITY], [-1], [1e300], [true]])(
    '%s is refused',
    (stated) => {
      expect(read(stated, 'epoch-seconds')).toBe('bad-time');
      expect(read(stated, 'epoch-milliseconds')).toBe('bad-time');
    },
  );
});
