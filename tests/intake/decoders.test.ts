import { describe, expect, test } from 'vitest';
import { decoderFor } from '../../hub/intake/decoders/decoder.ts';
import type { Decode } from '../../hub/intake/decoders/types.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function read(decode: Decode, text: string): unknown {
  const decoded = decode(bytes(text));
  return decoded.ok ? decoded.value : decoded.reason;
}

describe('the number decoder', () => {
  const decode = decoderFor({ kind: 'number' });

  test.each([
    ['861.5', 861.5],
    [' 861.5\r\n', 861.5],
    ['-0.25', -0.25],
    ['+7', 7],
    ['.5', 0.5],
    ['5.', 5],
    ['1.2e3', 1200],
  ])('reads %j', (text, value) => {
    expect(read(decode, text)).toEqual({ value, at: null });
  });

  test.each([
    ['nan', 'bad-value'],
    ['NaN', 'bad-value'],
    ['Infinity', 'bad-value'],
    ['0x10', 'bad-value'],
    ['861,5', 'bad-value'],
    ['861.5 C', 'bad-value'],
    ['1e999', 'not-finite'],
    ['null', 'bad-value'],
    ['"861.5"', 'bad-value'],
    ['   ', 'bad-value'],
    ['', 'empty-payload'],
  ])('refuses %j as %s', (text, reason) => {
    expect(read(decode, text)).toBe(reason);
  });

  test('refuses bytes that are not UTF-8', () => {
    expect(decode(Uint8Array.of(0xff, 0xfe, 0x31))).toMatchObject({ ok: false, reason: 'bad-encoding' });
  });
});

describe('the JSON decoder', () => {
  const bare = decoderFor({
    kind: 'json',
    valuePointer: '/temp_c',
    timePointer: null,
    timeFormat: 'iso8601',
  });
  const timed = decoderFor({
    kind: 'json',
    valuePointer: '/r/0/v',
    timePointer: '/when',
    timeFormat: 'epoch-seconds',
  });

  test('picks the value, and the time where the binding names one', () => {
    expect(read(bare, '{"temp_c": 861.5, "battery": 3.7}')).toEqual({ value: 861.5, at: null });
    expect(read(timed, '{"r":[{"v":20}],"when":1700000000.5}')).toEqual({ value: 20, at: 1_700_000_000_500 });
  });

  test('the empty pointer reads a bare number', () => {
    const whole = decoderFor({ kind: 'json', valuePointer: '', timePointer: null, timeFormat: 'iso8601' });

    expect(read(whole, '21.5')).toEqual({ value: 21.5, at: null });
  });

  test.each([
    ['{"temp_c": null}', 'bad-value'],
    ['{"temp_c": "861.5"}', 'bad-value'],
    ['{"temp_c": NaN}', 'bad-json'],
    ['{"temp_c": 1e999}', 'not-finite'],
    ['{"temp_f": 1}', 'value-not-found'],
    ['[]', 'value-not-found'],
    ['{', 'bad-json'],
    ['', 'empty-payload'],
  ])('refuses %j as %s', (text, reason) => {
    expect(read(bare, text)).toBe(reason);
  });

  test('a value without the time that was promised is refused, not stamped with now', () => {
    expect(read(timed, '{"r":[{"v":20}]}')).toBe('value-not-found');
    expect(read(timed, '{"r":[{"v":20}],"when":"soon"}')).toBe('bad-time');
  });

  test('a pointer that is none refuses every payload and does not throw', () => {
    const broken = decoderFor({
      kind: 'json',
      valuePointer: 'temp',
      timePointer: null,
      timeFormat: 'iso8601',
    });

    expect(read(broken, '{"temp":1}')).toBe('value-not-found');
  });
});
