import { describe, expect, it } from 'vitest';
import { checkHead } from '../../../dashboard/alarms/kept-head.ts';
import { asideTexts, checkAside, SHELF_MINUTES } from '../../../dashboard/alarms/set-aside-form.ts';
import { MOST_SHELF_MINUTES } from '../../../hub/contract/alarm.ts';

describe('putting an alarm aside', () => {
  it('wants a name and a reason before it is sent', () => {
    const { value, faults } = checkAside(asideTexts(''));
    expect(value).toBeNull();
    expect(new Set(Object.keys(faults))).toEqual(new Set(['by', 'why']));
    expect(checkAside({ ...asideTexts('Ann'), why: '   ' }).value).toBeNull();
  });

  it('sends a shelf with its minutes, and an order out of service without', () => {
    const texts = { ...asideTexts(' Ann '), minutes: '30', why: ' cleaning ' };
    expect(checkAside(texts).value).toEqual({
      way: 'shelve',
      body: { minutes: 30, by: 'Ann', why: 'cleaning' },
    });
    const out = checkAside({ ...texts, way: 'take-out' });
    expect(out.value).toEqual({ way: 'take-out', body: { by: 'Ann', why: 'cleaning' } });
  });

  it('offers no shelf that the hub would refuse as too long', () => {
    expect(Math.max(...SHELF_MINUTES)).toBe(MOST_SHELF_MINUTES);
    const all = SHELF_MINUTES.map((minutes) =>
      checkAside({ ...asideTexts('Ann'), minutes: String(minutes), why: 'x' }),
    );
    expect(all.every(({ value }) => value !== null)).toBe(true);
    expect(checkAside({ ...asideTexts('Ann'), minutes: '481', why: 'x' }).faults).toHaveProperty('minutes');
  });
});

describe('a last entry that was kept', () => {
  const hash = '0123456789abcdef'.repeat(4);

  it('is a number and the 64 digits of its hash, in any case and with spaces about', () => {
    expect(checkHead({ seq: ' 17 ', hash: ` ${hash.toUpperCase()} ` }).value).toEqual({ seq: 17, hash });
  });

  it('is not sent while one of the two is wrong', () => {
    expect(Object.keys(checkHead({ seq: '0', hash }).faults)).toEqual(['seq']);
    expect(Object.keys(checkHead({ seq: '1.5', hash: hash.slice(1) }).faults)).toEqual(['seq', 'hash']);
    expect(checkHead({ seq: '', hash }).value).toBeNull();
  });
});
