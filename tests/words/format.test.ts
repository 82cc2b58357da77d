import { describe, expect, it } from 'vitest';
import {
  difference,
  duration,
  elapsed,
  numberOf,
  rate,
  temperature,
  textOf,
} from '../../hub/contract/words/format.ts';

describe('temperatures', () => {
  it('are converted exactly: 0 °C is 32 °F, 100 °C is 212 °F, -40 is -40 (definition of the Fahrenheit scale)', () => {
    expect([0, 100, -40].map((celsius) => temperature(celsius, '[degF]'))).toEqual([
      '32 °F',
      '212 °F',
      '-40 °F',
    ]);
    expect(temperature(860.4, 'Cel')).toBe('860 °C');
    expect(temperature(-0.2, 'Cel')).toBe('0 °C');
  });

  it('as differences and rates carry no offset', () => {
    expect(difference(10, '[degF]')).toBe('18 °F');
    expect(difference(1.25, 'Cel')).toBe('1.3 °C');
    expect(rate(28, '[degF]')).toBe('50 °F/h');
  });

  it('that nobody knows are unknown, not zero', () => {
    expect(temperature(null, 'Cel')).toBe('unknown');
    expect(difference(null, 'Cel')).toBe('unknown');
    expect(rate(null, 'Cel')).toBe('an unknown rate');
  });
});

describe('times', () => {
  it('to go are rounded up, so that nothing ends before it says', () => {
    expect([0, 0.2, 59, 60, 61, 3600, 3601, 7800].map(duration)).toEqual([
      '0 s',
      '1 s',
      '59 s',
      '1 min',
      '2 min',
      '1 h',
      '1 h 1 min',
      '2 h 10 min',
    ]);
    expect(duration(36_001)).toBe('11 h');
  });

  it('that have passed are rounded down, so that no soak looks longer than it was', () => {
    expect([59.9, 119.9, 120, 3599, 3600, 3660].map(elapsed)).toEqual([
      '59 s',
      '119 s',
      '2 min',
      '59 min',
      '1 h',
      '1 h 1 min',
    ]);
    expect(elapsed(null)).toBe('an unknown time');
  });
});

describe('params', () => {
  it('give only what is of the right kind', () => {
    expect(numberOf({ a: 1, b: 'x' }, 'b')).toBeNull();
    expect(numberOf({ a: Number.NaN }, 'a')).toBeNull();
    expect(textOf({ a: 1, b: '' }, 'b', 'fallback')).toBe('fallback');
  });
});
