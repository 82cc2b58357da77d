import { describe, expect, it } from 'vitest';
import { disagreements, type Opinion, stripEnds } from '../../../dashboard/steel/disagree-rows.ts';
import { critical, known, unknown } from './answers.ts';

const from = { standing: 'published-secondary' as const, source: 'a book' };
const opinion = (formula: string, celsius: number, outside: string[] = []): Opinion => ({
  formula,
  celsius,
  inValidity: outside.length === 0,
  outside,
  from,
  rangeFrom: from,
});

describe('what the formulas disagree on', () => {
  const ac1 = [opinion('B', 722), opinion('A', 704, ['C 0.85 % (0 to 0.6)']), opinion('C', 716)];
  const [first, , third] = disagreements(
    critical({ ac1: known(722, 699, 745), opinions: { ac1, ac3: [], ms: [] } }),
  );

  it('is the distance from the coolest to the hottest, with how many were made for such a steel', () => {
    expect(first).toMatchObject({ symbol: 'Ac1', spread: { low: 704, high: 722 }, inside: 2 });
    expect(first?.opinions.map(({ formula }) => formula)).toEqual(['A', 'C', 'B']);
  });

  it('has no spread without formulas', () => {
    expect(third).toMatchObject({ symbol: 'Ms', spread: null, inside: 0 });
  });

  it('is drawn with room for every formula and for the band that is used', () => {
    if (first === undefined) throw new Error('no row');
    const ends = stripEnds(first);
    expect(ends.low).toBeLessThan(699);
    expect(ends.high).toBeGreaterThan(745);
    const refused = stripEnds({ ...first, answer: unknown('none') });
    expect(refused.low).toBeLessThan(704);
    expect(refused.high).toBeLessThan(745);
  });
});
