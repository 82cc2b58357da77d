import { describe, expect, it } from 'vitest';
import { ShopSettings } from '../../hub/contract/shop.ts';
import { addChannel, addFurnace, HOUR, openTest, scheduleDraft, T0 } from './helpers.ts';

const withCode = (code: string) => expect.objectContaining({ name: 'ArchiveError', code });

describe('the shop', () => {
  it('begins with the default settings and keeps what is changed', () => {
    const archive = openTest(':memory:', true);
    const { id, simulated, settings } = archive.shop();
    expect(simulated).toBe(true);
    expect(settings).toEqual(ShopSettings.parse({}));
    archive.saveSettings({ ...settings, name: 'Anvil Lane', carbonMonoxideFirstPpm: 15.5 }, T0 + 1);
    expect(archive.shop()).toEqual({
      id,
      simulated: true,
      settings: { ...settings, name: 'Anvil Lane', carbonMonoxideFirstPpm: 15.5 },
    });
  });

  it('does not keep settings that contradict themselves', () => {
    const archive = openTest();
    const { settings } = archive.shop();
    const crossed = { ...settings, carbonMonoxideFirstPpm: 60, carbonMonoxideSecondPpm: 20 };
    expect(() => archive.saveSettings(crossed, T0)).toThrow(/second CO limit/);
    expect(archive.shop().settings).toEqual(settings);
  });
});

describe('furnaces', () => {
  it('are kept as given, changed by id, and listed in the order they were made', () => {
    const archive = openTest();
    const forge = addFurnace(archive, 'Forge');
    const oven = addFurnace(archive, 'Oven');
    const changed = archive.saveFurnace({ ...forge, name: 'Big forge', archived: true }, T0 + HOUR);
    expect(archive.furnace(forge.id)).toEqual(changed);
    expect(archive.furnaces()).toEqual([changed, oven]);
  });

  it('cannot be changed when they are not there', () => {
    const archive = openTest();
    const forge = addFurnace(archive);
    expect(() => archive.saveFurnace({ ...forge, id: 'other' }, T0)).toThrow(withCode('not-found'));
    expect(archive.furnace('other')).toBeNull();
  });
});

describe('nodes', () => {
  it('are found by id or by name', () => {
    const archive = openTest();
    const node = archive.createNode({ name: 'forge-1', label: 'Forge node', note: 'on the wall' }, T0);
    expect(node).toMatchObject({ adopted: true, status: 'unknown', refused: {}, lastHeardAt: null });
    expect(archive.node('forge-1')).toEqual(node);
    expect(archive.node(node.id)).toEqual(node);
    expect(archive.node('forge-2')).toBeNull();
  });

  it('have one name each', () => {
    const archive = openTest();
    const first = archive.createNode({ name: 'forge-1', label: '', note: '' }, T0);
    const second = archive.createNode({ name: 'forge-2', label: '', note: '' }, T0);
    const draft = { name: 'forge-1', label: '', note: '' };
    expect(() => archive.createNode(draft, T0)).toThrow(withCode('conflict'));
    expect(() => archive.saveNode({ ...second, name: 'forge-1' })).toThrow(withCode('conflict'));
    expect(archive.nodes()).toEqual([first, second]);
  });

  it('do not lose what they said of themselves to a slow change by a person', () => {
    const archive = openTest();
    const seen = archive.createNode({ name: 'forge-1', label: '', note: '' }, T0);
    archive.commitIntake([
      { node: 'forge-1', receivedAt: T0 + 5, status: 'online', readings: [], refusals: [] },
    ]);
    const saved = archive.saveNode({ ...seen, label: 'Forge node' });
    expect(saved).toMatchObject({ label: 'Forge node', status: 'online', lastHeardAt: T0 + 5 });
  });

  it('take their channels along to a new name', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    const node = archive.node('forge-1');
    if (node) archive.saveNode({ ...node, name: 'forge-one' });
    expect(archive.channel(channel.id)?.node).toBe('forge-one');
  });
});

describe('channels', () => {
  it('are kept as given, and bring their node with them', () => {
    const archive = openTest();
    const furnace = addFurnace(archive);
    const facts = { furnaceId: furnace.id, possibleLow: -10, possibleHigh: 1250.5, staleAfterSeconds: 2.5 };
    const channel = addChannel(archive, 'chamber', facts);
    expect(channel).toMatchObject({
      ...facts,
      adopted: true,
      archived: false,
      latest: null,
      baseUnit: 'Cel',
    });
    expect(archive.channel(channel.id)).toEqual(channel);
    expect(archive.node('forge-1')?.adopted).toBe(true);
  });

  it('have one name each within their node', () => {
    const archive = openTest();
    addChannel(archive, 'chamber');
    const load = addChannel(archive, 'load');
    addChannel(archive, 'chamber', { node: 'oven-1' });
    expect(() => addChannel(archive, 'chamber')).toThrow(withCode('conflict'));
    expect(() => archive.saveChannel({ ...load, name: 'chamber' })).toThrow(withCode('conflict'));
    expect(archive.channels().map(({ node, name }) => `${node}/${name}`)).toEqual([
      'forge-1/chamber',
      'forge-1/load',
      'oven-1/chamber',
    ]);
  });

  it('cannot belong to a furnace that is not there', () => {
    const archive = openTest();
    expect(() => addChannel(archive, 'chamber', { furnaceId: 'nowhere' })).toThrow(withCode('not-found'));
    expect(archive.channels()).toEqual([]);
    expect(archive.nodes()).toEqual([]);
  });

  it('keep their quantity once a person has accepted them', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    const other = { ...channel, quantity: 'pressure' as const };
    expect(() => archive.saveChannel(other)).toThrow(withCode('conflict'));
    expect(() => archive.saveChannel({ ...channel, id: 'other' })).toThrow(withCode('not-found'));
    expect(archive.channel(channel.id)).toEqual(channel);
  });
});

describe('bindings', () => {
  it('are kept whole, with their decoder, until they are deleted', () => {
    const archive = openTest();
    const binding = archive.createBinding(
      {
        topic: 'garage/+/temp',
        node: null,
        channel: 'temp',
        quantity: 'temperature',
        unit: '[degF]',
        scale: 0.1,
        offset: -3.5,
        decoder: { kind: 'json', valuePointer: '/t~1c', timePointer: null, timeFormat: 'iso8601' },
      },
      T0,
    );
    expect(archive.bindings()).toEqual([binding]);
    expect(archive.deleteBinding(binding.id)).toBe(true);
    expect(archive.deleteBinding(binding.id)).toBe(false);
    expect(archive.bindings()).toEqual([]);
  });
});

describe('schedules', () => {
  it('are kept as given, as version 1', () => {
    const archive = openTest();
    const made = archive.createSchedule(scheduleDraft, T0);
    expect(made).toEqual({ ...scheduleDraft, id: made.id, version: 1, createdAt: T0, archived: false });
    expect(archive.schedule(made.id)).toEqual(made);
    expect(archive.schedule('other')).toBeNull();
  });

  it('show their newest version, one each, by name', () => {
    const archive = openTest();
    const first = archive.createSchedule(scheduleDraft, T0);
    const other = archive.createSchedule({ ...scheduleDraft, name: 'anneal' }, T0);
    const revised = archive.reviseSchedule(first.id, { ...scheduleDraft, note: 'slower' }, T0 + HOUR);
    expect(revised).toMatchObject({ id: first.id, version: 2, note: 'slower', createdAt: T0 + HOUR });
    expect(archive.schedules()).toEqual([other, revised]);
  });

  it('are put away, not deleted', () => {
    const archive = openTest();
    const made = archive.createSchedule(scheduleDraft, T0);
    expect(archive.archiveSchedule(made.id, T0 + 1)).toBe(true);
    expect(archive.archiveSchedule('other', T0 + 1)).toBe(false);
    expect(archive.schedule(made.id)).toEqual({ ...made, archived: true });
  });

  it('cannot be revised when they are not there', () => {
    const archive = openTest();
    expect(() => archive.reviseSchedule('other', scheduleDraft, T0)).toThrow(withCode('not-found'));
    expect(archive.schedules()).toEqual([]);
  });
});
