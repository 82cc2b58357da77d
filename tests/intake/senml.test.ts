import { describe, expect, test } from 'vitest';
import { chronological, resolveSenml, type SenmlPack } from '../../hub/intake/senml.ts';
import type { SenmlEntry } from '../../hub/intake/senml-record.ts';
import { fromSecondaryUnit } from '../../hub/intake/senml-units.ts';
import { understandsVersion } from '../../hub/intake/senml-version.ts';
import { derived, derivedCases, SENML_EXAMPLES, SENML_PRINTED_5_1_4 } from '../reference/senml.ts';

const NOW = 1_700_000_500;

function resolve(input: unknown, now = NOW): SenmlPack {
  const outcome = resolveSenml(input, now);
  if (!outcome.ok) throw new Error(`refused: ${outcome.reason} ${outcome.detail}`);
  return outcome.value;
}

/** The resolved record as RFC 8428 section 4.6 writes it. */
function written(entry: SenmlEntry, version: number): Record<string, unknown> {
  const label = { number: 'v', string: 'vs', boolean: 'vb', data: 'vd', none: null }[entry.value.kind];
  return {
    ...(version === 10 ? {} : { bver: version }),
    n: entry.name,
    ...(entry.unit === null ? {} : { u: entry.unit }),
    t: entry.time,
    ...(label === null || entry.value.kind === 'none' ? {} : { [label]: entry.value.value }),
    ...(entry.sum === null ? {} : { s: entry.sum }),
  };
}

/** Times are sums of decimal fractions: compared to the microsecond, the rest exactly. */
function toMicrosecond(records: readonly object[]): unknown {
  return records.map((record) => ({
    ...record,
    t: Math.round(Number(Reflect.get(record, 't')) * 1e6),
  }));
}

function writtenPack(pack: SenmlPack, entries = pack.entries): unknown {
  return toMicrosecond(entries.map((entry) => written(entry, pack.version)));
}

describe('the examples of RFC 8428 section 5.1', () => {
  test.each(SENML_EXAMPLES)('$id resolves to its published form', (example) => {
    const pack = resolve(example.input, example.nowUsed);

    expect(pack.faults).toEqual([]);
    expect(writtenPack(pack)).toEqual(toMicrosecond(example.resolvedInPackOrder));
    expect(writtenPack(pack, chronological(pack.entries))).toEqual(
      toMicrosecond(example.resolvedChronological),
    );
  });

  test('section 5.1.3 resolves to what section 5.1.4 prints', () => {
    const example = SENML_EXAMPLES.find(({ id }) => id === '5.1.3-multiple-measurements');

    expect(SENML_PRINTED_5_1_4).toHaveLength(13);
    expect(writtenPack(resolve(example?.input))).toEqual(toMicrosecond(SENML_PRINTED_5_1_4));
  });
});

describe('resolution rules', () => {
  test('a base value is added, and alone it makes no reading', () => {
    const pack = resolve(derived('D1').input);

    expect(pack.entries.map(({ name, value }) => [name, value])).toEqual([
      ['a:x', { kind: 'number', value: 21.5 }],
      ['a:y', { kind: 'number', value: 19.5 }],
    ]);
    expect(pack.faults).toMatchObject([{ index: 2, reason: 'no-value' }]);
  });

  test('a base sum is added, and a sum needs no value', () => {
    const pack = resolve(derived('D2').input);

    expect(writtenPack(pack)).toEqual(toMicrosecond(derived('D2').resolved as object[]));
    expect(pack.entries[0]?.value).toEqual({ kind: 'none' });
  });

  test.each(derivedCases<{ sum: number; meaning: string }>('D3'))(
    'time $sum is $meaning',
    ({ sum, meaning }) => {
      const [entry] = resolve([{ n: 'x', v: 1, t: sum }]).entries;

      const absolute = meaning.startsWith('absolute');
      expect(entry?.timeIsAbsolute).toBe(absolute);
      expect(entry?.time).toBeCloseTo(absolute ? sum : NOW + sum, 6);
    },
  );

  test('2^28 seconds is 1978-07-04T21:24:16Z (RFC 8428 section 4.5.3)', () => {
    const [entry] = resolve([{ n: 'x', v: 1, bt: 2 ** 28 }]).entries;

    expect(new Date((entry?.time ?? 0) * 1000).toISOString()).toBe('1978-07-04T21:24:16.000Z');
  });

  test('a base field holds until the same one is stated again', () => {
    expect(writtenPack(resolve(derived('D4').input))).toEqual(
      toMicrosecond(derived('D4').resolved as object[]),
    );
  });

  test.each([
    ['D5', 'must-understand'],
    ['D7', 'several-values'],
    ['D8', 'bad-name'],
    ['D9', 'bad-name'],
    ['D10', 'bad-name'],
  ])('%s is refused as %s', (number, reason) => {
    const pack = resolve(derived(number).input);

    expect(pack.entries).toEqual([]);
    expect(pack.faults).toMatchObject([{ index: 0, reason }]);
  });

  test('an unknown label is passed over', () => {
    const pack = resolve(derived('D6').input);

    expect(pack.faults).toEqual([]);
    expect(pack.entries).toHaveLength(1);
  });

  test.each(derivedCases<{ implements: number; pack: number; ok: boolean }>('D11'))(
    'a reader of $implements and a pack of $pack: $ok (RFC 9100)',
    ({ implements: implemented, pack, ok }) => {
      expect(understandsVersion(implemented, pack)).toBe(ok);
    },
  );

  test.each([
    [5, true],
    [10, true],
    [26, true],
    [16, false],
    [42, false],
    [0, false],
    [10.5, false],
    [2 ** 60, false],
  ])('this reader takes version %d: %s', (bver, ok) => {
    expect(resolveSenml([{ bver, n: 'x', v: 1 }], NOW).ok).toBe(ok);
  });

  test('a pack has one version', () => {
    const outcome = resolveSenml(
      [
        { bver: 10, n: 'x', v: 1 },
        { bver: 26, n: 'x', v: 1 },
      ],
      NOW,
    );

    expect(outcome).toMatchObject({ ok: false, reason: 'unsupported-version' });
  });

  test.each(derivedCases<{ u: string; v: number; si: { u: string; v: number } }>('D12'))(
    '$v $u is $si.v $si.u (RFC 8798)',
    ({ u, v, si }) => {
      const primary = fromSecondaryUnit(u, v);

      expect(primary?.unit).toBe(si.u);
      expect(primary?.value).toBeCloseTo(si.v, 12);
    },
  );
});

describe('a bad entry', () => {
  test.each([
    ['null', null, 'bad-entry'],
    ['a number', 7, 'bad-entry'],
    ['an array', [], 'bad-entry'],
    ['an empty object', {}, 'bad-name'],
    ['a null value', { n: 'x', v: null }, 'bad-value'],
    ['a text value', { n: 'x', v: '21.5' }, 'bad-value'],
    ['an infinite value', { n: 'x', v: Number.POSITIVE_INFINITY }, 'not-finite'],
    ['a text time', { n: 'x', v: 1, t: '2024-01-01' }, 'bad-time'],
    ['a number name', { n: 3, v: 1 }, 'bad-name'],
    ['a number unit', { n: 'x', u: 3, v: 1 }, 'bad-unit-field'],
    ['padding in data', { n: 'x', vd: 'aGk=' }, 'bad-value'],
    ['a text truth', { n: 'x', vb: 'true' }, 'bad-value'],
    ['a text sum', { n: 'x', s: '1' }, 'bad-value'],
  ])('(%s) never loses the good ones', (_what, entry, reason) => {
    const pack = resolve([{ n: 'a', v: 1 }, entry, { n: 'b', v: 2 }]);

    expect(pack.entries.map(({ name }) => name)).toEqual(['a', 'b']);
    expect(pack.faults).toMatchObject([{ index: 1, reason }]);
  });

  test('a base field that makes no sense takes down its users until it is stated again', () => {
    const pack = resolve([
      { bn: 'a/', n: 'x', v: 1 },
      { bn: 7, n: 'x', v: 2 },
      { n: 'y', v: 3 },
      { bn: 'b/', n: 'x', v: 4 },
    ]);

    expect(pack.entries.map(({ name }) => name)).toEqual(['a/x', 'b/x']);
    expect(pack.faults.map(({ reason }) => reason)).toEqual(['bad-base-field', 'bad-base-field']);
  });

  test('an entry with its own unit does not suffer from a bad base unit', () => {
    const pack = resolve([
      { bu: 5, n: 'x', v: 1 },
      { n: 'y', u: 'Cel', v: 2 },
    ]);

    expect(pack.entries.map(({ name, unit }) => [name, unit])).toEqual([['y', 'Cel']]);
  });

  test('a base extension that must be understood spoils the rest of the pack, an own one only its entry', () => {
    const own = resolve([
      { n: 'a', v: 1, foo_: 1 },
      { n: 'b', v: 2 },
    ]);
    const base = resolve([
      { n: 'a', v: 1 },
      { n: 'b', v: 2, bfoo_: 1 },
      { n: 'c', v: 3 },
    ]);

    expect(own.entries.map(({ name }) => name)).toEqual(['b']);
    expect(base.entries.map(({ name }) => name)).toEqual(['a']);
  });

  test.each([[{}], ['x'], [null], [3], [undefined]])('%j is not a pack', (document) => {
    expect(resolveSenml(document, NOW)).toMatchObject({ ok: false, reason: 'not-a-pack' });
  });

  test('a field named __proto__ changes nothing: it ends in _ and is not understood', () => {
    const pack = resolve(JSON.parse('[{"n":"x","v":1,"__proto__":{"bn":"evil"}},{"n":"y","v":2}]'));

    expect(pack.entries.map(({ name }) => name)).toEqual(['y']);
    expect(pack.faults).toMatchObject([{ index: 0, reason: 'must-understand' }]);
  });

  test('names that every object inherits are not fields', () => {
    const pack = resolve([{ n: 'x', v: 1, constructor: 'bn', toString: 1, hasOwnProperty: 1 }]);

    expect(pack.faults).toEqual([]);
    expect(pack.entries).toHaveLength(1);
  });
});
