import { describe, expect, it } from 'vitest';
import { channelTexts, checkChannelChange } from '../../../dashboard/setup/channel-form.ts';
import { Reader } from '../../../dashboard/setup/read-texts.ts';
import { datesOf, dateTexts, hasDates, NO_DATES } from '../../../dashboard/setup/sensor-dates.ts';
import {
  changedSettings,
  checkSettings,
  type SettingsTexts,
  settingsTexts,
} from '../../../dashboard/setup/settings-form.ts';
import { channel, settings } from '../mock-shop.ts';

const withAir = (texts: SettingsTexts, air: Partial<SettingsTexts['air']>): SettingsTexts => ({
  ...texts,
  air: { ...texts.air, ...air },
});

describe('the air in the form of limits', () => {
  it('leaves alone what it does not show, also what is not as it was at first', () => {
    const shop = settings({ airProfile: 'osha', workRate: 'light', roomCubicMetres: 60 });
    const { value } = checkSettings({ ...settingsTexts(shop), first: '10' });
    expect(value && changedSettings(shop, value)).toEqual({ carbonMonoxideFirstPpm: 10 });
  });

  it('sends the profile, the work rate and the room that were chosen', () => {
    const shop = settings();
    const texts = withAir(settingsTexts(shop), { profile: 'niosh', workRate: 'level-4', room: '72,5' });
    const { value } = checkSettings(texts);
    expect(value && changedSettings(shop, value)).toEqual({
      airProfile: 'niosh',
      workRate: 'level-4',
      roomCubicMetres: 72.5,
    });
  });

  it('takes limits of the shop’s own with who set them, and shows them again', () => {
    const own = { twaPpm: 10, ceilingPpm: 80, source: 'Insurer, 2026' };
    const texts = withAir(settingsTexts(settings()), {
      profile: 'custom',
      twa: '10',
      ceiling: '80',
      source: own.source,
    });
    const { value, faults } = checkSettings(texts);
    expect(faults).toEqual({});
    expect(value).toMatchObject({ airProfile: 'custom', airCustomLimits: own });
    expect(value && changedSettings(value, value)).toEqual({});
    expect(value && settingsTexts(value).air).toEqual(texts.air);
  });

  it('refuses limits of the shop’s own without a limit, out of range, or by nobody', () => {
    const custom = withAir(settingsTexts(settings()), { profile: 'custom', source: 'us' });
    expect(checkSettings(custom)).toEqual({
      value: null,
      faults: { 'airCustomLimits.twaPpm': 'Needed: at least one limit.' },
    });
    expect(checkSettings(withAir(custom, { stel: '0.2' })).faults).toEqual({
      'airCustomLimits.stelPpm': 'From 1 to 10000 ppm.',
    });
    expect(checkSettings(withAir(custom, { stel: '60', source: ' ' })).faults).toHaveProperty([
      'airCustomLimits.source',
    ]);
  });

  it('forgets the volume of the room when it is emptied, and reads no words as one', () => {
    const shop = settings({ roomCubicMetres: 60 });
    const emptied = checkSettings(withAir(settingsTexts(shop), { room: '' })).value;
    expect(emptied && changedSettings(shop, emptied)).toEqual({ roomCubicMetres: null });
    expect(checkSettings(withAir(settingsTexts(shop), { room: 'big' }))).toMatchObject({ value: null });
    expect(checkSettings(withAir(settingsTexts(shop), { room: '0' })).faults).toEqual({
      roomCubicMetres: 'At least 1 m³.',
    });
  });
});

describe('the dates of a gas sensor', () => {
  const noon = new Date(2026, 10, 25, 12, 34).getTime();
  const none = { calibratedAt: null, calibrationDueAt: null, endOfLifeAt: null };

  it('come back as the day they name, and an instant that was not touched stays', () => {
    const texts = dateTexts({ ...none, calibratedAt: noon });
    expect(texts).toEqual({ ...NO_DATES, calibratedAt: '2026-11-25' });
    expect(datesOf(texts, new Reader(), { ...none, calibratedAt: noon }).calibratedAt).toBe(noon);
    const moved = datesOf({ ...texts, calibratedAt: '2026-11-24' }, new Reader(), none);
    expect(moved.calibratedAt).toBe(new Date(2026, 10, 24).getTime());
  });

  it('refuse a day that there is not', () => {
    const reader = new Reader();
    datesOf({ ...NO_DATES, endOfLifeAt: '2026-02-31', calibratedAt: 'soon' }, reader, null);
    expect(Object.keys(reader.faults)).toEqual(['calibratedAt', 'endOfLifeAt']);
  });

  it('are asked of gases alone', () => {
    expect(hasDates('oxygen')).toBe(true);
    expect(hasDates('temperature')).toBe(false);
    const chamber = channel({ id: 'c', quantity: 'temperature' });
    expect(checkChannelChange(channelTexts(chamber, settings()), settings()).value).not.toHaveProperty(
      'endOfLifeAt',
    );
  });

  it('are sent, and taken away when emptied', () => {
    const co = channel({ id: 'co', quantity: 'carbon-monoxide', endOfLifeAt: noon });
    const texts = channelTexts(co, settings());
    expect(checkChannelChange(texts, settings()).value).toMatchObject({ endOfLifeAt: noon });
    const emptied = checkChannelChange({ ...texts, dates: NO_DATES }, settings()).value;
    expect(emptied).toMatchObject({ endOfLifeAt: null, calibratedAt: null });
  });
});
