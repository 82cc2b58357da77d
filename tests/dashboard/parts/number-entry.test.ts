import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type NumberRule,
  readAmount,
  readDuration,
  readNumber,
  writeAmount,
  writeDuration,
} from '../../../dashboard/parts/number-entry.ts';
import { unitNamed } from '../../../dashboard/words/format.ts';

const fahrenheit: NumberRule = { unit: unitNamed('[degF]'), meaning: 'point', low: 20, high: 1200 };

describe('numbers that people type', () => {
  it('takes a decimal comma, spaces between thousands and a typographic minus', () => {
    expect(readNumber('1 560,5')).toEqual({ ok: true, value: 1560.5 });
    expect(readNumber(' −12.5 ')).toEqual({ ok: true, value: -12.5 });
    expect(readNumber('')).toEqual({ ok: true, value: null });
  });

  it.each(['12x', '1,2,3', '0x10', 'Infinity', 'NaN', '1e3', '--4', '.'])('refuses %s', (text) => {
    expect(readNumber(text).ok).toBe(false);
  });

  it('keeps base units behind the unit that is seen', () => {
    // 1472 °F is 800 °C.
    const point = readAmount('1472', fahrenheit);
    expect(point.ok && point.value).toBeCloseTo(800, 9);
    const difference = readAmount('18', { unit: unitNamed('[degF]'), meaning: 'difference' });
    expect(difference.ok && difference.value).toBeCloseTo(10, 9);
  });

  it('names the limit in the unit that is seen, and does not refuse the limit itself', () => {
    expect(readAmount('2193', fahrenheit)).toEqual({ ok: false, message: 'at most 2192 °F' });
    expect(readAmount('2192', fahrenheit).ok).toBe(true);
    expect(readAmount('68', fahrenheit).ok).toBe(true);
    expect(readAmount('', fahrenheit).ok).toBe(false);
    expect(readAmount('', { ...fahrenheit, optional: true })).toEqual({ ok: true, value: null });
  });

  it('shows again what was typed, after a round trip through base units', () => {
    fc.assert(
      fc.property(fc.integer({ min: 680, max: 21_920 }), (tenths) => {
        const typed = String(tenths / 10);
        const read = readAmount(typed, fahrenheit);
        expect(read.ok && writeAmount(read.value, fahrenheit)).toBe(typed);
      }),
    );
  });
});

describe('durations that people type', () => {
  it.each([
    ['20 min', 1200],
    ['20', 1200],
    ['1:30', 5400],
    ['1:30:15', 5415],
    ['1 h 30 min', 5400],
    ['1.5 h', 5400],
    ['1,5h', 5400],
    ['45 s', 45],
    ['2 hours', 7200],
    ['1h30', 5400],
  ])('reads %s as %d s', (text, seconds) => {
    expect(readDuration(text)).toEqual({ ok: true, value: seconds });
  });

  it.each(['', 'soon', '-5 min', '1:75', '5 min 2 h', '10 m/s'])('refuses "%s"', (text) => {
    expect(readDuration(text).ok).toBe(false);
  });

  it('reads back what it wrote', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_209_600 }), (seconds) => {
        expect(readDuration(writeDuration(seconds))).toEqual({ ok: true, value: seconds });
      }),
    );
  });
});
