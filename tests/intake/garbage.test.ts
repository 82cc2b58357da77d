import fc from 'fast-check';
import { connectAsync } from 'mqtt';
import { afterEach, describe, expect, test } from 'vitest';
import { publishPacket, rawNode } from '../broker/raw-client.ts';
import { type Bench, bench, message, NOW } from './support.ts';
import { wiredHub } from './wire-support.ts';

const READINGS = 'soakwatch/forge-1/readings';
const GOOD = [{ n: 'good', u: 'Cel', v: 861.5 }];

const counted = (shop: Bench): number =>
  Object.values(shop.refused('forge-1')).reduce((sum, count) => sum + count, 0);

function deep(depth: number, open: string, close: string): string {
  return open.repeat(depth) + close.repeat(depth);
}

const HORRORS: readonly (readonly [string, string | Uint8Array, string])[] = [
  ['nothing', '', 'empty-payload'],
  ['blanks', '   ', 'bad-json'],
  ['half a pack', '[{"n":"t","u":"Cel","v":1', 'bad-json'],
  ['a trailing comma', '[{"n":"t","u":"Cel","v":1},]', 'bad-json'],
  ['NaN', '[{"n":"t","u":"Cel","v":NaN}]', 'bad-json'],
  ['Infinity', '[{"n":"t","u":"Cel","v":-Infinity}]', 'bad-json'],
  ['a number beyond a double', '[{"n":"t","u":"Cel","v":1e999}]', 'not-finite'],
  ['a time beyond a date', '[{"n":"t","u":"Cel","v":1,"t":1e300}]', 'bad-time'],
  ['a time before 1970', '[{"n":"t","u":"Cel","v":1,"t":-1e12}]', 'bad-time'],
  ['null', 'null', 'not-a-pack'],
  ['a bare number', '861.5', 'not-a-pack'],
  ['an object', '{"temp":861.5}', 'not-a-pack'],
  ['a pack of null', '[null]', 'bad-entry'],
  ['a pack of packs', '[[{"n":"t","u":"Cel","v":1}]]', 'bad-entry'],
  ['a null value', '[{"n":"t","u":"Cel","v":null}]', 'bad-value'],
  ['a text value', '[{"n":"t","u":"Cel","v":"861.5"}]', 'bad-value'],
  ['an array value', '[{"n":"t","u":"Cel","v":[861.5]}]', 'bad-value'],
  ['a wrong unit', '[{"n":"t","u":"furlong","v":1}]', 'unknown-unit'],
  ['no unit', '[{"n":"t","v":1}]', 'unit-missing'],
  ['no name', '[{"u":"Cel","v":1}]', 'bad-name'],
  ['a name of 129 letters', `[{"n":"${'n'.repeat(129)}","u":"Cel","v":1}]`, 'bad-name'],
  ['a name with a newline', '[{"n":"a\\nb","u":"Cel","v":1}]', 'bad-name'],
  ['a name with half a character', '[{"n":"a\\ud800","u":"Cel","v":1}]', 'bad-name'],
  ['a name that would leave its folder', '[{"n":"../../etc/passwd","u":"Cel","v":1}]', 'bad-name'],
  ['a poisoned prototype', '[{"__proto__":{"n":"t"},"n":"t","u":"Cel","v":1}]', 'must-understand'],
  ['arrays 100 000 deep', deep(100_000, '[', ']'), 'bad-entry'],
  ['objects 40 000 deep', `[${'{"v":'.repeat(40_000)}1${'}'.repeat(40_000)}]`, 'bad-name'],
  ['a value 40 000 deep', `[{"n":"t","u":"Cel","v":${deep(40_000, '[', ']')}}]`, 'bad-value'],
  ['bytes that are not UTF-8', Uint8Array.of(0x5b, 0xff, 0xfe, 0x5d), 'bad-encoding'],
  ['half a UTF-8 character', Uint8Array.of(0x22, 0xe2, 0x82), 'bad-encoding'],
  ['binary', Uint8Array.from({ length: 256 }, (_, byte) => byte), 'bad-encoding'],
  ['a version from the future', '[{"bver":42,"n":"t","u":"Cel","v":1}]', 'unsupported-version'],
  ['two megabytes', `[${' '.repeat(2_000_000)}]`, 'payload-too-large'],
];

describe('a horror', () => {
  test.each(HORRORS)(
    '(%s) is counted, kept to be looked at, and followed by business as usual',
    async (_what, payload, reason) => {
      const shop = bench();
      await shop.take(message(READINGS, payload));
      await shop.take(message(READINGS, GOOD));

      expect(shop.refused('forge-1')).toMatchObject({ [reason]: 1 });
      expect(shop.archive.refusals({ limit: 5 }).map((kept) => kept.reason)).toContain(reason);
      expect(shop.values('forge-1', 'good')).toEqual([861.5]);
      expect(shop.values('forge-1', 't')).toEqual([]);
      expect(shop.faults).toEqual([]);
    },
  );

  test('leaves the prototypes of the language alone', async () => {
    const shop = bench();
    await shop.take(message(READINGS, '[{"constructor":{"prototype":{"x":1}},"n":"t","u":"Cel","v":1}]'));

    expect(Reflect.get({}, 'x')).toBeUndefined();
    expect(shop.values('forge-1', 't')).toEqual([1]);
  });
});

describe('anything at all', () => {
  /** After each: nothing thrown, nothing of our own to blame, and a good message is still stored. */
  async function survives(shop: Bench, taken: Parameters<typeof shop.take>[0]): Promise<void> {
    await shop.take(taken);
    const at = NOW / 1000 + shop.values('forge-1', 'good').length;
    await shop.take(message(READINGS, [{ ...GOOD[0], t: at }]));
    expect(shop.faults).toEqual([]);
    expect(shop.values('forge-1', 'good')).toHaveLength(at - NOW / 1000 + 1);
  }

  test('as bytes', async () => {
    const shop = bench();
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (bytes) => {
        const before = counted(shop);
        await survives(shop, message(READINGS, bytes));
        expect(counted(shop)).toBeGreaterThan(before);
      }),
      { numRuns: 150 },
    );
  });

  test('as JSON', async () => {
    const shop = bench();
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 4 }), (json) => survives(shop, message(READINGS, json))),
      { numRuns: 150 },
    );
  });

  test('as a pack of entries that are nearly right', async () => {
    const shop = bench();
    const odd = fc.oneof(fc.double(), fc.string(), fc.constant(null), fc.boolean(), fc.constant([]));
    const nearly = <T>(right: fc.Arbitrary<T>) => fc.oneof({ arbitrary: right, weight: 4 }, odd);
    const entry = fc.record(
      {
        bn: nearly(fc.constantFrom('', 'a/', '_')),
        bt: nearly(fc.constantFrom(0, 1.7e9, -1e15)),
        bu: nearly(fc.constantFrom('Cel', 'Pa', 'x')),
        bv: nearly(fc.double()),
        bs: nearly(fc.double()),
        bver: nearly(fc.constantFrom(10, 26, 5)),
        n: nearly(fc.constantFrom('t', 'u', '')),
        u: nearly(fc.constantFrom('Cel', 'ppm', 'mbar', '')),
        v: nearly(fc.double()),
        vs: odd,
        s: odd,
        t: nearly(fc.integer()),
        ut: odd,
        x_: odd,
      },
      { requiredKeys: [] },
    );
    await fc.assert(
      fc.asyncProperty(fc.array(entry, { maxLength: 6 }), (pack) => survives(shop, message(READINGS, pack))),
      { numRuns: 150 },
    );
  });

  test('as a topic', async () => {
    const shop = bench();
    const level = fc.oneof(fc.string(), fc.constantFrom('soakwatch', 'readings', 'status', '+', '$SYS', ''));
    await fc.assert(
      fc.asyncProperty(fc.array(level, { maxLength: 5 }), (levels) =>
        survives(shop, message(levels.join('/'), GOOD)),
      ),
      { numRuns: 150 },
    );
  });
});

describe('over the wire', () => {
  const cleanUp: (() => unknown)[] = [];

  afterEach(async () => {
    for (const undo of cleanUp.splice(0).reverse()) await undo();
  });

  test('two megabytes are acknowledged, refused, kept by their start, and do not hold up the next', async () => {
    const hub = await wiredHub();
    cleanUp.push(() => hub.stop());
    const node = await connectAsync(hub.address);
    cleanUp.push(() => node.endAsync(true));

    await node.publishAsync(READINGS, Buffer.alloc(2_000_000, 0x5b), { qos: 1 });
    await node.publishAsync(READINGS, JSON.stringify(GOOD), { qos: 1 });

    expect(hub.archive.node('forge-1')?.refused).toMatchObject({ 'payload-too-large': 1 });
    expect(
      hub.archive.refusals({ limit: 5 }).find(({ reason }) => reason === 'payload-too-large'),
    ).toMatchObject({
      payloadBytes: 2_000_000,
      payloadText: expect.stringMatching(/^\[{100}/),
    });
    expect(hub.values('forge-1', 'good')).toEqual([861.5]);
  });

  test('a packet beyond all bounds is counted, and other nodes go on', async () => {
    const hub = await wiredHub();
    cleanUp.push(() => hub.stop());
    const greedy = await rawNode(hub.port, 'greedy');
    const other = await rawNode(hub.port, 'other');
    const told = hub.committed(({ refusals }) =>
      refusals.some(({ reason }) => reason === 'packet-too-large'),
    );

    greedy.sendBytes(Uint8Array.of(0x32, 0xff, 0xff, 0xff, 0x7f));
    await greedy.closed;
    await told;
    other.send(publishPacket(READINGS, JSON.stringify(GOOD), 1));

    expect(await other.next()).toMatchObject({ cmd: 'puback' });
    expect(hub.values('forge-1', 'good')).toEqual([861.5]);
    other.end();
  });

  test('every horror on one connection is acknowledged, and the last good reading is stored', async () => {
    const hub = await wiredHub();
    cleanUp.push(() => hub.stop());
    const node = await connectAsync(hub.address);
    cleanUp.push(() => node.endAsync(true));

    const sent = HORRORS.map(([, payload]) => node.publishAsync(READINGS, Buffer.from(payload), { qos: 1 }));
    await Promise.all([...sent, node.publishAsync(READINGS, JSON.stringify(GOOD), { qos: 1 })]);

    const refused = hub.archive.node('forge-1')?.refused ?? {};
    const total = Object.values(refused).reduce((sum, count) => sum + count, 0);
    // One more than the horrors: the good channel waits to be adopted, which is counted too.
    expect(total).toBe(HORRORS.length + 1);
    expect(hub.values('forge-1', 'good')).toEqual([861.5]);
    expect(hub.faults).toEqual([]);
  });
});
