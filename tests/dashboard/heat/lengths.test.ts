import { describe, expect, it } from 'vitest';
import { convertLength, length, readLength, writeLength } from '../../../dashboard/heat/lengths.ts';

// NIST SP 811 (2008), appendix B.8: 1 in = 25.4 mm exactly.
describe('lengths as a shop writes them', () => {
  it('reads inches, also as fractions, into millimetres', () => {
    expect(readLength('1', 'in')).toEqual({ ok: true, value: 25.4 });
    expect(readLength('5/8', 'in')).toEqual({ ok: true, value: 15.875 });
    expect(readLength(' 1 1/4" ', 'in')).toEqual({ ok: true, value: 31.75 });
    expect(readLength('0,5', 'in')).toEqual({ ok: true, value: 12.7 });
  });

  it('does not read a fraction as millimetres, nor a fraction over nothing', () => {
    expect(readLength('5/8', 'mm').ok).toBe(false);
    expect(readLength('1/0', 'in').ok).toBe(false);
    expect(readLength('thick', 'in').ok).toBe(false);
  });

  it('tells emptiness from a number', () => {
    expect(readLength('  ', 'mm')).toEqual({ ok: true, value: null });
  });

  it('writes a length in the other unit and leaves what cannot be read to its author', () => {
    expect(convertLength('1 1/2', 'in', 'mm')).toBe('38.1');
    expect(convertLength('6', 'mm', 'in')).toBe('0.236');
    expect(convertLength('about 6', 'mm', 'in')).toBe('about 6');
    expect(writeLength(25, 'mm')).toBe('25');
  });

  it('shows no more figures than a rule gives', () => {
    expect(length(18.75, 'mm')).toBe('19 mm');
    expect(length(3.125, 'mm')).toBe('3.1 mm');
    expect(length(25.4, 'in')).toBe('1 in');
    expect(length(100, 'mm')).toBe('100 mm');
  });
});
