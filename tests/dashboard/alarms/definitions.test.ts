import { describe, expect, it } from 'vitest';
import { foundIn, numbersOf } from '../../../dashboard/alarms/definition-said.ts';
import { definitionTable } from '../../../hub/alarms/definition-table.ts';
import { words } from '../../../hub/contract/words/words.ts';
import { settings } from '../mock-shop.ts';

const table = definitionTable(settings(), words('en').rationale);
const names = new Map(table.map(({ kind, name }) => [kind, name]));
const factsOf = (kind: string) => {
  const entry = table.find((one) => one.kind === kind);
  if (entry === undefined) throw new Error(`no definition of ${kind}`);
  return new Map(numbersOf(entry, names));
};

describe('the table of definitions', () => {
  it('gives the limit that holds in this shop, with its unit', () => {
    const limit = settings().carbonMonoxideSecondPpm;
    expect(factsOf('unsafe-air-second').get('Limit')).toBe(`${limit} ppm (carbon monoxide second ppm)`);
    expect(factsOf('not-watching-air').get('Limit')).toMatch(/set for each channel/);
  });

  it('says at once where there is no time, and the delays in seconds', () => {
    const facts = factsOf('unsafe-air-second');
    expect(facts.get('Time to act')).toBe('at once');
    expect(facts.get('Deadband')).toBe('10 % of the limit');
    expect(facts.get('Delay on / off')).toBe('0 s / 30 s');
  });

  it('names what suppresses it and what it may follow from by their names, not their codes', () => {
    expect(factsOf('soak-stalled').get('Suppressed by')).toBe('Probe at fault');
    expect(factsOf('overshoot-ahead').get('May follow from')).toBe('Overshoot');
    expect(factsOf('unsafe-air-second').has('Suppressed by')).toBe(false);
  });

  it('leaves nothing out of any row: time, limit, deadband, delays and source stand in each', () => {
    for (const entry of table) {
      const heads = numbersOf(entry, names).map(([head]) => head);
      const needed = ['Time to act', 'Limit', 'Deadband', 'Delay on / off', 'Source'];
      expect(heads).toEqual(expect.arrayContaining(needed));
    }
  });

  it('finds rows by words that must all stand in them', () => {
    expect(foundIn(table, '')).toHaveLength(table.length);
    expect(foundIn(table, 'probe FAULT').map(({ kind }) => kind)).toContain('probe-fault');
    expect(foundIn(table, 'probe zeppelin')).toEqual([]);
  });
});
