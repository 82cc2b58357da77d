import { describe, expect, it } from 'vitest';
import { MOST_OFFERED_CHANNELS, MOST_OFFERED_NODES } from '../../hub/archive/intake-batch.ts';
import { addChannel, addFurnace, incoming, intake, MINUTE, openTest, T0 } from './helpers.ts';

describe('a node that nobody has accepted', () => {
  it('is offered with its channels, and its readings are kept from the first word', () => {
    const archive = openTest();
    const commit = archive.commitIntake([intake('stove-7', [incoming('flue', T0, 210)])]);
    expect(commit.nodes).toMatchObject([{ name: 'stove-7', adopted: false, createdAt: T0 }]);
    expect(commit.channels).toMatchObject([
      {
        node: 'stove-7',
        name: 'flue',
        adopted: false,
        role: 'other',
        baseUnit: 'Cel',
        staleAfterSeconds: 20,
      },
    ]);
    expect(commit.readings).toHaveLength(1);
    expect(archive.channels()).toMatchObject([{ latest: { at: T0, value: 210 } }]);
  });

  it('is offered once, however often it speaks', () => {
    const archive = openTest();
    const payloads = [0, 1, 2].map((n) => intake('stove-7', [incoming('flue', T0 + n, 210)]));
    expect(archive.commitIntake(payloads).channels).toHaveLength(1);
    expect(archive.commitIntake(payloads).channels).toEqual([]);
    expect(archive.nodes()).toHaveLength(1);
  });

  it('is counted for every payload, and shown once a minute for each channel', () => {
    const archive = openTest();
    const say = (second: number, name: string) =>
      archive.commitIntake([
        intake('stove-7', [incoming(name, T0 + second * 1000, 1)], {
          receivedAt: T0 + second * 1000,
          topic: 'soakwatch/stove-7/readings',
          payload: Buffer.from(`[${second}]`),
        }),
      ]);
    for (let second = 0; second < 120; second += 1) say(second, 'flue');
    say(119, 'door');
    const shown = archive.refusals({ node: 'stove-7', limit: 100 });
    expect(archive.node('stove-7')?.refused).toEqual({ 'unknown-channel': 121 });
    expect(shown.map(({ payloadText }) => payloadText)).toEqual(['[119]', '[60]', '[0]']);
  });

  it('is still offered when all it says is nonsense', () => {
    const archive = openTest();
    const refusals = [{ topic: 't', reason: 'bad-json', detail: 'no', payload: Buffer.from('{') }];
    archive.commitIntake([intake('stove-7', [], { refusals })]);
    expect(archive.nodes()).toMatchObject([{ name: 'stove-7', adopted: false, refused: { 'bad-json': 1 } }]);
  });

  it('keeps all it said when a person accepts it', () => {
    const archive = openTest();
    archive.commitIntake([intake('forge-1', [incoming('chamber', T0, 20)])]);
    const furnace = addFurnace(archive);
    const channel = addChannel(archive, 'chamber', { label: 'Inside', furnaceId: furnace.id });
    const commit = archive.commitIntake([intake('forge-1', [incoming('chamber', T0 + MINUTE, 21)])]);
    expect(channel).toMatchObject({ adopted: true, label: 'Inside', latest: { value: 20 } });
    expect(archive.node('forge-1')?.adopted).toBe(true);
    expect(commit.refusals).toEqual([]);
    expect(archive.readings.range(channel.id, T0, T0 + MINUTE)).toHaveLength(2);
  });

  it('begins again when it is accepted as another quantity than it first spoke of', () => {
    const archive = openTest();
    archive.commitIntake([intake('forge-1', [incoming('supply', T0, 3)])]);
    const channel = addChannel(archive, 'supply', { quantity: 'pressure' });
    const bars = incoming('supply', T0, 150_000, { quantity: 'pressure' });
    expect(channel).toMatchObject({ quantity: 'pressure', baseUnit: 'Pa', latest: null });
    expect(archive.commitIntake([intake('forge-1', [bars])]).readings).toHaveLength(1);
    expect(archive.readings.range(channel.id, T0, T0).map(({ value }) => value)).toEqual([150_000]);
  });
});

describe('names that a stranger makes up', () => {
  it('do not fill the archive: beyond the bound nodes are refused, known ones still served', () => {
    const archive = openTest();
    addChannel(archive);
    const strangers = Array.from({ length: MOST_OFFERED_NODES + 5 }, (_, n) =>
      intake(`made-up-${n}`, [incoming('x', T0, n)]),
    );
    const commit = archive.commitIntake([...strangers, intake('forge-1', [incoming('chamber', T0, 20)])]);
    expect(archive.nodes()).toHaveLength(MOST_OFFERED_NODES + 1);
    expect(commit.readings).toHaveLength(MOST_OFFERED_NODES + 1);
    expect(archive.refusals({ limit: 100 }).filter((r) => r.reason === 'too-many-unknown')).toHaveLength(1);
  });

  it('make room again when a node is accepted', () => {
    const archive = openTest();
    archive.commitIntake(Array.from({ length: MOST_OFFERED_NODES }, (_, n) => intake(`made-up-${n}`, [])));
    archive.createNode({ name: 'made-up-0', label: '', note: '' }, T0);
    archive.commitIntake([intake('newcomer', [])]);
    expect(archive.node('newcomer')).not.toBeNull();
  });

  it('do not fill one node with channels', () => {
    const archive = openTest();
    const readings = Array.from({ length: MOST_OFFERED_CHANNELS + 3 }, (_, n) => incoming(`x${n}`, T0, n));
    const commit = archive.commitIntake([intake('forge-1', readings)]);
    expect(commit.channels).toHaveLength(MOST_OFFERED_CHANNELS);
    expect(commit.readings).toHaveLength(MOST_OFFERED_CHANNELS);
    expect(archive.node('forge-1')?.refused).toEqual({ 'unknown-channel': 1, 'too-many-unknown': 1 });
  });

  it.each(['', 'a/b', 'x'.repeat(65), 'ü', '+', '__proto__'])(
    'are no node names when they are %j',
    (name) => {
      const archive = openTest();
      const commit = archive.commitIntake([intake(name, [incoming('x', T0, 1)])]);
      expect(archive.nodes()).toEqual([]);
      expect(commit).toMatchObject({ readings: [], refusals: [{ reason: 'bad-name' }] });
    },
  );

  it('are no channel names when they are not SenML names', () => {
    const archive = openTest();
    const commit = archive.commitIntake([intake('forge-1', [incoming('a b', T0, 1), incoming('ok', T0, 2)])]);
    expect(commit.channels.map(({ name }) => name)).toEqual(['ok']);
    expect(archive.node('forge-1')?.refused).toMatchObject({ 'bad-name': 1 });
  });

  it('may be the words of the machinery underneath', () => {
    const archive = openTest();
    const names = ['constructor', 'hasOwnProperty', 'toString'];
    archive.commitIntake(names.map((name) => intake(name, [incoming(name, T0, 1)])));
    expect(archive.nodes().map(({ name }) => name)).toEqual(names);
    expect(archive.channels().map(({ latest }) => latest?.value)).toEqual([1, 1, 1]);
  });
});
