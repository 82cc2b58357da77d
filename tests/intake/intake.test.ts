import { describe, expect, test } from 'vitest';
import { MOST_PAYLOAD_BYTES } from '../../hub/intake/intake.ts';
import { bench, message, NOW } from './support.ts';

const READINGS = 'soakwatch/forge-1/readings';

describe('a native payload', () => {
  test('is kept under its node and its resolved names, in base units and in time order', async () => {
    const shop = bench();

    await shop.take(
      message(READINGS, [
        { bn: 'chamber/', bt: NOW / 1000, bu: 'Cel', n: 'left', v: 861.5 },
        { n: 'left', t: -2, v: 860 },
        { n: 'right', u: '[degF]', v: 1562 },
      ]),
    );

    expect(shop.values('forge-1', 'chamber/left')).toEqual([860, 861.5]);
    expect(shop.values('forge-1', 'chamber/right')).toEqual([expect.closeTo(850, 9)]);
    expect(shop.archive.channels().every(({ adopted }) => !adopted)).toBe(true);
  });

  test('without a time is from the instant it arrived', async () => {
    const shop = bench();
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', v: 20 }]));

    const [channel] = shop.archive.channels();
    expect(channel?.latest).toEqual({ at: NOW, value: 20, quality: 'good' });
  });

  test('sent twice is stored once', async () => {
    const shop = bench();
    const pack = [{ n: 't', u: 'Cel', t: NOW / 1000 - 3600, v: 20 }];
    await shop.take(message(READINGS, pack));
    await shop.take(message(READINGS, pack, { receivedAt: NOW + 5000 }));

    expect(shop.values('forge-1', 't')).toEqual([20]);
  });

  test('one bad entry never loses the good ones, and a reason counts once for a payload', async () => {
    const shop = bench();
    await shop.take(
      message(READINGS, [
        { n: 'a', u: 'Cel', v: 1 },
        { n: 'b', u: 'Cel', v: null },
        { n: 'c', u: 'Cel', v: 'hot' },
        { n: 'd', u: 'furlong', v: 1 },
        { n: 'e', u: 'Cel', vs: 'text' },
        { n: 'f', u: 'Cel', v: 2 },
      ]),
    );

    expect(shop.archive.channels().map(({ name }) => name)).toEqual(['a', 'f']);
    expect(shop.refused('forge-1')).toMatchObject({ 'bad-value': 1, 'unknown-unit': 1, 'not-numeric': 1 });
    const kept = shop.archive.refusals({ limit: 10 }).find(({ reason }) => reason === 'bad-value');
    expect(kept?.detail).toBe('entry 2: v is null, a number was expected (and 1 more)');
  });

  test('a channel that a commit has made is known to the next payload', async () => {
    const shop = bench();
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', v: 20 }]));
    await shop.take(message(READINGS, [{ n: 't', v: 21 }], { receivedAt: NOW + 1000 }));

    expect(shop.values('forge-1', 't')).toEqual([20, 21]);
  });

  test('after a refresh it is read by what a person has set up', async () => {
    const shop = bench();
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', v: 20 }]));
    const [channel] = shop.archive.channels();
    if (!channel) throw new Error('no channel was made');
    shop.archive.saveChannel({ ...channel, adopted: true, unit: '[degF]', possibleHigh: 1000 });
    shop.intake.refresh();
    await shop.take(message(READINGS, [{ n: 't', v: 2000 }], { receivedAt: NOW + 1000 }));

    expect(shop.archive.channel(channel.id)?.latest).toMatchObject({
      quality: 'bad',
      reason: 'out-of-range',
    });
  });

  test('from the future is kept, marked and counted', async () => {
    const shop = bench();
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', t: NOW / 1000 + 60, v: 20 }]));

    const [channel] = shop.archive.channels();
    expect(channel?.latest).toMatchObject({ quality: 'uncertain', reason: 'future' });
    expect(shop.refused('forge-1')).toMatchObject({ 'future-timestamp': 1 });
  });

  test('hours late takes its place among the others', async () => {
    const shop = bench();
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', t: NOW / 1000, v: 3 }]));
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', t: NOW / 1000 - 7200, v: 1 }]));
    await shop.take(message(READINGS, [{ n: 't', u: 'Cel', t: NOW / 1000 - 3600, v: 2 }]));

    expect(shop.values('forge-1', 't')).toEqual([1, 2, 3]);
  });

  test('handed out of a broker’s store, it says something only if it says when', async () => {
    const shop = bench();
    const pack = [
      { n: 'when', u: 'Cel', t: NOW / 1000 - 60, v: 1 },
      { n: 'never', u: 'Cel', v: 2 },
    ];
    await shop.take(message(READINGS, pack, { fromRetained: true }));

    expect(shop.values('forge-1', 'when')).toEqual([1]);
    expect(shop.values('forge-1', 'never')).toEqual([]);
    expect(shop.refused('forge-1')).toMatchObject({ 'retained-without-time': 1 });
  });

  test('of too many entries, or too many bytes, is refused whole', async () => {
    const shop = bench();
    const entry = { n: 't', u: 'Cel', v: 1 };
    await shop.take(
      message(
        READINGS,
        Array.from({ length: 5001 }, () => entry),
      ),
    );
    await shop.take(message(READINGS, new Uint8Array(MOST_PAYLOAD_BYTES + 1).fill(0x20)));

    expect(shop.values('forge-1', 't')).toEqual([]);
    expect(shop.refused('forge-1')).toMatchObject({ 'too-many-entries': 1, 'payload-too-large': 1 });
    expect(shop.archive.refusals({ limit: 1 })[0]?.payloadBytes).toBe(MOST_PAYLOAD_BYTES + 1);
  });

  test('of just so many entries is taken', async () => {
    const shop = bench();
    const entries = Array.from({ length: 5000 }, (_, index) => ({ n: 't', u: 'Cel', t: -index, v: index }));
    await shop.take(message(READINGS, entries));

    expect(shop.values('forge-1', 't')).toHaveLength(5000);
  });
});

describe('a status', () => {
  const STATUS = 'soakwatch/forge-1/status';

  test.each(['online', 'offline'] as const)('%s is kept', async (status) => {
    const shop = bench();
    await shop.take(message(STATUS, status, { fromRetained: true }));

    expect(shop.archive.node('forge-1')).toMatchObject({ status, statusAt: NOW });
  });

  test('of any other word is refused, and the cleared one says nothing', async () => {
    const shop = bench();
    await shop.take(message(STATUS, 'online'));
    await shop.take(message(STATUS, 'Offline?'));
    await shop.take(message(STATUS, ''));

    expect(shop.archive.node('forge-1')?.status).toBe('online');
    expect(shop.refused('forge-1')).toMatchObject({ 'bad-status': 1 });
  });
});

describe('other topics', () => {
  test('under our own prefix are counted, for the node where one is named', async () => {
    const shop = bench();
    await shop.take(message('soakwatch/forge-1/reading', 'x'));
    await shop.take(message('soakwatch/a b/zzz', 'x'));

    expect(shop.refused('forge-1')).toEqual({ 'unknown-topic': 1 });
    expect(shop.archive.nodes().map(({ name }) => name)).toEqual(['forge-1']);
  });

  test('elsewhere are nobody’s business: nothing is written at all', async () => {
    const shop = bench();
    let commits = 0;
    shop.committer.onCommit(() => {
      commits += 1;
    });
    await shop.take(message('home/kitchen/temp', '21'));

    expect(commits).toBe(0);
    expect(shop.archive.refusals({ limit: 1 })).toEqual([]);
  });

  test('a node name that cannot be one is refused and does not become a node', async () => {
    const shop = bench();
    await shop.take(message('soakwatch/a b/readings', [{ n: 't', u: 'Cel', v: 1 }]));

    expect(shop.archive.nodes()).toEqual([]);
    expect(shop.archive.refusals({ limit: 1 })).toMatchObject([{ reason: 'bad-name' }]);
  });
});

describe('the promise of accept', () => {
  test('it rejects when the commit failed, and only then', async () => {
    const shop = bench();
    const done = shop.intake.accept(message(READINGS, [{ n: 't', u: 'Cel', v: 1 }]));
    shop.archive.close();
    shop.clock.advance(5);

    await expect(done).rejects.toMatchObject({ code: 'closed' });
  });

  test('it is not settled before the commit', async () => {
    const shop = bench();
    const events: string[] = [];
    shop.committer.onCommit(() => void events.push('commit'));
    const done = shop.intake.accept(message(READINGS, 'rubbish')).then(() => events.push('accepted'));
    shop.clock.advance(5);
    await done;

    expect(events).toEqual(['commit', 'accepted']);
  });

  test('a packet on which the broker closed the connection is counted', async () => {
    const shop = bench();
    const done = shop.intake.reportOversize({ clientId: 'c7', bytes: 9_000_000 });
    shop.clock.advance(5);
    await done;

    const kept = shop.archive.refusals({ limit: 5 }).find(({ reason }) => reason === 'packet-too-large');
    expect(kept?.detail).toContain('client c7 announced a packet of 9000000 bytes');
  });
});
