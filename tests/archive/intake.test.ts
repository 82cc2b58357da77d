import { describe, expect, it } from 'vitest';
import { addChannel, HOUR, incoming, intake, openTest, SECOND, T0 } from './helpers.ts';

describe('committing payloads of known channels', () => {
  it('keeps the readings and tells just those that are new, in the order they came', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    const payload = intake('forge-1', [incoming('chamber', T0 + SECOND, 21), incoming('chamber', T0, 20)]);
    const first = archive.commitIntake([payload]);
    const again = archive.commitIntake([payload, intake('forge-1', [incoming('chamber', T0 + 2000, 22)])]);
    expect(first.readings.map(({ value }) => value)).toEqual([21, 20]);
    expect(again).toMatchObject({ duplicates: 2, channels: [], refusals: [] });
    expect(again.readings).toEqual([{ channel: channel.id, at: T0 + 2000, value: 22, quality: 'good' }]);
    expect(archive.readings.range(channel.id, T0, T0 + HOUR)).toHaveLength(3);
  });

  it('keeps the first value when one payload says an instant twice', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    const twice = intake('forge-1', [incoming('chamber', T0, 20), incoming('chamber', T0, 900)]);
    expect(archive.commitIntake([twice])).toMatchObject({ duplicates: 1 });
    expect(archive.readings.latest(channel.id)?.value).toBe(20);
  });

  it('keeps the quality and its reason as intake found them', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    const reading = incoming('chamber', T0, 1900, { quality: 'bad', reason: 'out-of-range' });
    const commit = archive.commitIntake([intake('forge-1', [reading])]);
    const kept = { at: T0, value: 1900, quality: 'bad', reason: 'out-of-range' };
    expect(commit.readings).toEqual([{ ...kept, channel: channel.id }]);
    expect(archive.readings.latest(channel.id)).toEqual(kept);
  });

  it('goes on keeping the readings of a channel that was put away', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    archive.saveChannel({ ...channel, archived: true });
    const commit = archive.commitIntake([intake('forge-1', [incoming('chamber', T0, 20)])]);
    expect(commit.readings).toHaveLength(1);
    expect(archive.channel(channel.id)).toMatchObject({ archived: true, latest: { value: 20 } });
  });

  it('refuses another quantity, and keeps the rest of the payload', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    const wrong = incoming('chamber', T0, 101_325, { quantity: 'pressure' });
    const commit = archive.commitIntake([
      intake('forge-1', [wrong, incoming('chamber', T0 + 1, 20)], {
        topic: 'soakwatch/forge-1/readings',
        payload: Buffer.from('[{"u":"Pa"}]'),
      }),
    ]);
    expect(commit.readings.map(({ value }) => value)).toEqual([20]);
    expect(commit.refusals).toMatchObject([
      { reason: 'wrong-quantity', node: 'forge-1', topic: 'soakwatch/forge-1/readings', payloadBytes: 12 },
    ]);
    expect(archive.readings.range(channel.id, T0, T0)).toEqual([]);
    expect(archive.node('forge-1')?.refused).toEqual({ 'wrong-quantity': 1 });
  });

  it('refuses what is not a number without losing the group', () => {
    const archive = openTest();
    addChannel(archive);
    const readings = [Number.NaN, Number.POSITIVE_INFINITY, 20].map((value, index) =>
      incoming('chamber', T0 + index, value),
    );
    const commit = archive.commitIntake([intake('forge-1', [...readings, incoming('chamber', T0 + 0.5, 1)])]);
    expect(commit.readings.map(({ value }) => value)).toEqual([20]);
    expect(archive.node('forge-1')?.refused).toEqual({ 'bad-value': 1 });
  });
});

describe('what a commit says of nodes', () => {
  it('remembers when a node was heard, and never turns that back', () => {
    const archive = openTest();
    addChannel(archive);
    archive.commitIntake([intake('forge-1', [incoming('chamber', T0, 20)], { receivedAt: T0 + 5000 })]);
    const { nodes } = archive.commitIntake([
      intake('forge-1', [incoming('chamber', T0 + 1, 20)], { receivedAt: T0 + 1000 }),
    ]);
    expect(nodes).toMatchObject([{ name: 'forge-1', lastHeardAt: T0 + 5000, status: 'unknown' }]);
  });

  it("takes the last will for the broker's word, not for the node's", () => {
    const archive = openTest();
    const online = intake('forge-1', [], { status: 'online', receivedAt: T0 });
    const offline = intake('forge-1', [], { status: 'offline', receivedAt: T0 + HOUR });
    archive.commitIntake([online]);
    const { nodes } = archive.commitIntake([offline]);
    expect(nodes).toMatchObject([{ status: 'offline', statusAt: T0 + HOUR, lastHeardAt: T0 }]);
  });

  it('names each node once, as it stands at the end', () => {
    const archive = openTest();
    const commit = archive.commitIntake([
      intake('forge-1', [], { status: 'online', receivedAt: T0 }),
      intake('oven-1', [], { status: 'online', receivedAt: T0 + 1 }),
      intake('forge-1', [], { status: 'offline', receivedAt: T0 + 2 }),
    ]);
    expect(commit.nodes.map(({ name, status }) => [name, status])).toEqual([
      ['forge-1', 'offline'],
      ['oven-1', 'online'],
    ]);
  });

  it('knows nothing of any node after a start', () => {
    const archive = openTest();
    archive.commitIntake([intake('forge-1', [], { status: 'online' })]);
    archive.forgetNodeStatus(T0 + HOUR);
    expect(archive.nodes()).toMatchObject([{ status: 'unknown', statusAt: T0 + HOUR, lastHeardAt: T0 }]);
  });
});

describe('a group of payloads', () => {
  it('is kept as a whole or not at all', () => {
    let left = 3;
    const archive = openTest();
    addChannel(archive);
    const poisoned = {
      ...intake('forge-2', []),
      get readings(): never {
        left -= 1;
        throw new Error('the third payload fails');
      },
    };
    const group = [intake('forge-1', [incoming('chamber', T0, 20)]), intake('oven-9', []), poisoned];
    expect(() => archive.commitIntake(group)).toThrow(expect.objectContaining({ code: 'fault' }));
    expect(left).toBe(2);
    expect(archive.nodes().map(({ name }) => name)).toEqual(['forge-1']);
    expect(archive.channels().map(({ latest }) => latest)).toEqual([null]);
    expect(archive.commitIntake(group.slice(0, 1)).readings).toHaveLength(1);
  });

  it('may be empty', () => {
    const commit = openTest().commitIntake([]);
    expect(commit).toEqual({ readings: [], duplicates: 0, nodes: [], channels: [], refusals: [] });
  });
});
