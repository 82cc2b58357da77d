import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { payloadText } from '../../hub/archive/payload-text.ts';

const bytes = (...values: number[]) => Uint8Array.from(values);

describe('a payload as text', () => {
  it('shows printable text as it is, in any script', () => {
    expect(payloadText(Buffer.from('{"t": 861.5, "u": "°C", "n": "炉"} 🔥'))).toBe(
      '{"t": 861.5, "u": "°C", "n": "炉"} 🔥',
    );
  });

  it('writes control bytes, line ends and broken UTF-8 as \\xNN', () => {
    expect(payloadText(bytes(0x00, 0x41, 0x0a, 0x7f))).toBe('\\x00A\\x0a\\x7f');
    expect(payloadText(bytes(0xff, 0xc3, 0x28))).toBe('\\xff\\xc3(');
    // RFC 3629 section 3: C0 AF is an overlong form, ED A0 80 a surrogate; neither is UTF-8.
    expect(payloadText(bytes(0xc0, 0xaf, 0xed, 0xa0, 0x80))).toBe('\\xc0\\xaf\\xed\\xa0\\x80');
  });

  it('does not let a payload turn the direction of the screen around', () => {
    expect(payloadText(Buffer.from('a\u202eb\u2028'))).toBe('a\\xe2\\x80\\xaeb\\xe2\\x80\\xa8');
  });

  it('shows a character that was cut in the middle by its bytes', () => {
    expect(payloadText(Buffer.from('°').subarray(0, 1))).toBe('\\xc2');
  });

  it('takes any bytes, and leaves nothing that is not printable', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (any) => {
        expect(payloadText(any)).not.toMatch(/[\p{C}\p{Zl}\p{Zp}]/u);
      }),
    );
  });
});
