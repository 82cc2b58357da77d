import { describe, expect, it } from 'vitest';
import { nextMark } from '../../../dashboard/pieces/mark.ts';

describe('the mark offered for a new piece', () => {
  it('counts on from the newest, with its leading zeros', () => {
    expect(nextMark(['K12', 'K11'])).toBe('K13');
    expect(nextMark(['HC-09'])).toBe('HC-10');
    expect(nextMark(['A099'])).toBe('A100');
  });

  it('passes every mark that is taken, whatever the case of its letters', () => {
    expect(nextMark(['K1', 'k2', 'K3'])).toBe('K4');
  });

  it('counts on from the newest that ends in a number, and begins with P1', () => {
    expect(nextMark(['Anvil', 'T7'])).toBe('T8');
    expect(nextMark(['Anvil'])).toBe('P1');
    expect(nextMark([])).toBe('P1');
  });

  it('offers none that would be too long for a mark', () => {
    expect(nextMark([`A${'9'.repeat(23)}`])).toBe('');
  });
});
