import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvCell, csvRow } from '../../hub/web/csv.ts';

describe('CSV for people with spreadsheets', () => {
  // OWASP ASVS 5.0, 1.2.10: = + - @ tab and null at the start of a field.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\0=1'])('disarms the formula %j', (text) => {
    expect(csvCell(text)).toMatch(/^"'/);
  });

  it('writes numbers as numbers, negative ones too, and nothing for what is unknown', () => {
    expect(csvRow([-12.5, 0, null, Number.NaN])).toBe('-12.5,0,,\r\n');
  });

  it('quotes commas, quotes and line ends by RFC 4180', () => {
    expect(csvCell('a "b", c')).toBe('"a ""b"", c"');
    expect(csvCell('plain')).toBe('plain');
  });

  it('never lets a text cell begin as a formula (law)', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const shown = csvCell(text).replace(/^"/, '');
        expect(/^[=+\-@\t\r\0]/.test(shown)).toBe(false);
      }),
    );
  });
});
