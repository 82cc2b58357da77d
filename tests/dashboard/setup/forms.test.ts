import { describe, expect, it } from 'vitest';
import { type BindingTexts, checkBinding, EMPTY_BINDING } from '../../../dashboard/setup/binding-form.ts';
import {
  channelTexts,
  checkChannelChange,
  checkNewChannel,
  widestRange,
} from '../../../dashboard/setup/channel-form.ts';
import { checkFurnace, furnaceTexts } from '../../../dashboard/setup/furnace-form.ts';
import { checkNode } from '../../../dashboard/setup/node-form.ts';
import { readSeconds } from '../../../dashboard/setup/read-texts.ts';
import {
  changedSettings,
  checkSettings,
  inDisplayUnit,
  settingsTexts,
} from '../../../dashboard/setup/settings-form.ts';
import { channel, FORGE, settings } from '../mock-shop.ts';

const NEEDED = 'Needed: please fill this in.';

describe('a furnace as it is typed', () => {
  it('takes its rating in the unit of the shop', () => {
    // NIST SP 811 B.9: 2372 °F = 1300 °C.
    const texts = { ...furnaceTexts(null, '[degF]'), name: 'Forge', rated: '2372' };
    expect(checkFurnace(texts, '[degF]').value).toMatchObject({ name: 'Forge', ratedCelsius: 1300 });
    expect(furnaceTexts({ ...FORGE, ratedCelsius: 1300 }, '[degF]').rated).toBe('2372');
  });

  it('asks for what is missing and names the limit that is crossed', () => {
    expect(checkFurnace(furnaceTexts(null, 'Cel'), 'Cel').faults).toEqual({
      name: NEEDED,
      ratedCelsius: NEEDED,
    });
    const hot = { ...furnaceTexts(null, 'Cel'), name: 'Sun', rated: '5500' };
    expect(checkFurnace(hot, 'Cel').faults).toEqual({ ratedCelsius: 'At most 1800 °C.' });
  });
});

describe('a channel as it is typed', () => {
  const shop = settings({ pressureUnit: 'bar', displayUnit: '[degF]' });

  it('takes its possible range in the unit that the shop shows', () => {
    const texts = { ...channelTexts(null, shop), node: 'gas-node', name: 'p', quantity: 'pressure' as const };
    const { value } = checkNewChannel({ ...texts, low: '0', high: '2,5', stale: '45' }, shop);
    expect(value).toMatchObject({ possibleLow: 0, possibleHigh: 250_000, staleAfterSeconds: 45 });
    expect(value).toMatchObject({ role: null, furnaceId: null, unit: null });
  });

  it('says what is missing before it says what a name looks like', () => {
    expect(checkNewChannel(channelTexts(null, shop), shop).faults).toEqual({ node: NEEDED, name: NEEDED });
    const odd = { ...channelTexts(null, shop), node: 'my node', name: 'chamber' };
    expect(checkNewChannel(odd, shop).faults.node).toContain('letters, digits');
  });

  it('refuses a range that is upside down', () => {
    const texts = { ...channelTexts(null, shop), node: 'n', name: 'c', low: '900', high: '100' };
    const { value, faults } = checkNewChannel(texts, shop);
    expect(value).toBeNull();
    expect(faults.possibleHigh).toContain('must lie below');
  });

  it('comes back unchanged when nothing is typed, its probe included', () => {
    const stored = channel({
      id: 'a',
      quantity: 'temperature',
      role: 'chamber',
      furnaceId: 'forge',
      possibleLow: -50,
      staleAfterSeconds: 90,
    });
    const { value } = checkChannelChange(channelTexts(stored, shop), shop);
    expect(value).toMatchObject({ role: 'chamber', furnaceId: 'forge', staleAfterSeconds: 90 });
    expect(value?.possibleLow).toBeCloseTo(-50, 6);
    expect(value?.probe).toBeNull();
  });

  it('leaves the old age alone when its field is emptied', () => {
    const stored = channel({ id: 'a', quantity: 'temperature' });
    const { value } = checkChannelChange({ ...channelTexts(stored, shop), stale: '' }, shop);
    expect(value && 'staleAfterSeconds' in value).toBe(false);
    expect(widestRange('temperature', settings())).toEqual(['−60 °C', '1820 °C']);
  });
});

describe('a binding as it is typed', () => {
  const whole: BindingTexts = {
    ...EMPTY_BINDING,
    topic: 'kiln/+/state',
    channel: 'chamber',
    valuePointer: '/temp_c',
  };

  it('becomes what the contract wants; an empty node is the topic’s own', () => {
    expect(checkBinding(whole).value).toEqual({
      topic: 'kiln/+/state',
      node: null,
      channel: 'chamber',
      quantity: 'temperature',
      unit: 'Cel',
      scale: 1,
      offset: 0,
      decoder: { kind: 'json', valuePointer: '/temp_c', timePointer: null, timeFormat: 'epoch-seconds' },
    });
  });

  it('wants a node where the topic names none', () => {
    const { value, faults } = checkBinding({ ...whole, topic: 'kiln/7/state' });
    expect(value).toBeNull();
    expect(faults.node).toContain('Name a node');
    expect(checkBinding({ ...whole, topic: 'kiln/7/state', node: 'kiln-7' }).faults).toEqual({});
  });

  it('finds a pointer without its slash, and a wildcard that binds too much', () => {
    expect(checkBinding({ ...whole, valuePointer: 'temp_c' }).faults['decoder.valuePointer']).toContain(
      '/temp_c',
    );
    expect(checkBinding({ ...whole, topic: 'kiln/+/#' }).faults.topic).toContain('no #');
    expect(checkBinding(EMPTY_BINDING).faults).toMatchObject({ topic: NEEDED, channel: NEEDED });
  });

  it('sends no pointer with a bare number', () => {
    expect(checkBinding({ ...whole, kind: 'number', scale: '0.1' }).value).toMatchObject({
      decoder: { kind: 'number' },
      scale: 0.1,
    });
  });
});

describe('the limits as they are typed', () => {
  it('come back as they are when nothing is changed', () => {
    const shop = settings();
    expect(checkSettings(settingsTexts(shop)).value).toEqual(shop);
  });

  it('must rise from the first CO limit to the second', () => {
    const texts = { ...settingsTexts(settings()), first: '70' };
    expect(checkSettings(texts)).toEqual({
      value: null,
      faults: { carbonMonoxideSecondPpm: 'the second CO limit must be above the first' },
    });
  });

  it('say their bounds with units, and what cannot be read at its field', () => {
    const texts = { ...settingsTexts(settings()), soakStalled: '2', diagonal: 'big', hot: '20' };
    expect(checkSettings(texts).faults).toEqual({
      soakStalledSeconds: 'At least 10 s.',
      hotAboveCelsius: 'At least 40 °C.',
      screenDiagonalInches: '"big" is not a number: write it like 860 or 12.5',
    });
  });

  it('keep their meaning when the shop turns to °F', () => {
    const texts = inDisplayUnit(settingsTexts(settings({ hotAboveCelsius: 100 })), '[degF]');
    // The boiling point of water: 100 °C = 212 °F.
    expect(texts.hot).toBe('212');
    expect(checkSettings(texts).value?.hotAboveCelsius).toBeCloseTo(100, 6);
  });

  it('send only what was changed, so that nothing is undone that another screen set', () => {
    const before = settings();
    const { value } = checkSettings({ ...settingsTexts(before), first: '10' });
    expect(value && changedSettings(before, value)).toEqual({ carbonMonoxideFirstPpm: 10 });
    expect(changedSettings(before, before)).toEqual({});
  });

  it('read a bare number as seconds', () => {
    expect(readSeconds('45')).toEqual({ ok: true, value: 45 });
    expect(readSeconds('3 min')).toEqual({ ok: true, value: 180 });
    expect(readSeconds(' ')).toEqual({ ok: true, value: null });
    expect(readSeconds('soon').ok).toBe(false);
  });
});

describe('a node as it is typed', () => {
  it('has a name that fits between two slashes of a topic', () => {
    expect(checkNode({ name: ' forge-node ', label: '', note: '' }).value?.name).toBe('forge-node');
    expect(checkNode({ name: 'a/b', label: '', note: '' }).faults.name).toContain('letters, digits');
    expect(checkNode({ name: '', label: '', note: '' }).faults).toEqual({ name: NEEDED });
  });
});
