import { describe, expect, test } from 'vitest';
import { formatPack, type NodeSample } from '../../../sensors-sim/wire/pack.ts';
import { resolve } from '../packs.ts';

const AT = 1_700_000_000_250;
const forge = (atMs: number, value: number): NodeSample => ({
  node: 'forge-node',
  atMs,
  values: [
    { name: 'chamber', unit: 'Cel', value },
    { name: 'supply-pressure', unit: 'Pa', value: 24_100 },
  ],
});

describe('a pack', () => {
  test('carries one base time and every channel', () => {
    expect(formatPack([forge(AT, 861.25)])).toBe(
      '[{"bt":1700000000.25,"n":"chamber","u":"Cel","v":861.25},{"n":"supply-pressure","u":"Pa","v":24100}]',
    );
  });

  test('of several samples resolves to each one instant', () => {
    const read = resolve(formatPack([forge(AT, 1), forge(AT + 5000, 2), forge(AT + 10_500, 3)]));
    expect(read.filter((each) => each.name === 'chamber').map((each) => [each.atMs, each.value])).toEqual([
      [AT, 1],
      [AT + 5000, 2],
      [AT + 10_500, 3],
    ]);
  });

  test('with ppm says that it is version 26, and only then', () => {
    // SOURCE: RFC 9100: secondary units are feature 4, 10 + 2^4.
    const air: NodeSample = { node: 'air-node', atMs: AT, values: [{ name: 'co', unit: 'ppm', value: 3.1 }] };
    expect(formatPack([air])).toBe('[{"bver":26,"bt":1700000000.25,"n":"co","u":"ppm","v":3.1}]');
    expect(formatPack([forge(AT, 1)])).not.toContain('bver');
  });

  test('rounds off the dust of binary fractions', () => {
    expect(formatPack([forge(AT, 33 * 0.1)])).toContain('"v":3.3}');
  });

  test('of a node that prints NaN is not JSON', () => {
    const text = formatPack([forge(AT, Number.NaN)]);
    expect(text).toContain('"v":NaN}');
    expect(() => JSON.parse(text)).toThrow(SyntaxError);
  });

  test('of nothing is refused', () => {
    expect(() => formatPack([])).toThrowError(expect.objectContaining({ code: 'bad-option' }));
  });
});
