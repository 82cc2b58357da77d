import type { DayChannel, DayConfig, DayFurnace } from '../air/day-types.ts';
import type { AirChannel, AirConfig, AirGas } from '../air/types.ts';
import type { Archive } from '../archive/types.ts';
import type { Channel, ShopSettings } from '../contract/shop.ts';
import { cohbConstants } from '../physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import {
  type CustomLimits,
  customProfile,
  type LimitProfile,
  limitProfile,
  workplaceLimit,
} from '../physics/carbon-monoxide/limits.ts';
import { adoptedChannels } from './shop-inputs.ts';

/** What the judges of the air are told about this shop. */

type Known = Pick<Archive, 'channels' | 'furnaces' | 'shop'>;
export type GasChannel = Channel & { readonly quantity: AirGas };

function isGas(channel: Channel): channel is GasChannel {
  const { quantity } = channel;
  return quantity === 'carbon-monoxide' || quantity === 'carbon-dioxide' || quantity === 'oxygen';
}

/** The accepted sensors of the shop's air. */
export function airChannels(archive: Pick<Archive, 'channels'>): readonly GasChannel[] {
  return adoptedChannels(archive, ({ role }) => role === 'room-air').filter(isGas);
}

export function airConfig(archive: Pick<Archive, 'shop'>, gases: readonly GasChannel[]): AirConfig {
  const { settings } = archive.shop();
  const profile = profileOf(settings);
  const ceiling = lowestOf(profile.ceiling?.ppm, profile.excursion?.ppm);
  return {
    channels: gases.map(instantChannel),
    firstPpm: settings.carbonMonoxideFirstPpm,
    secondPpm: settings.carbonMonoxideSecondPpm,
    // Immediately dangerous is that under every law: a body that sets no such level still has people in its rooms.
    idlhPpm: (profile.idlh ?? workplaceLimit('niosh-idlh')).ppm,
    ...(ceiling === null ? {} : { ceilingPpm: ceiling }),
  };
}

function lowestOf(...limits: readonly (number | undefined)[]): number | null {
  const given = limits.filter((limit) => limit !== undefined);
  return given.length === 0 ? null : Math.min(...given);
}

function instantChannel(channel: GasChannel): AirChannel {
  const { id, label, name, staleAfterSeconds, quantity, possibleHigh } = channel;
  const about = { id, label: label || name, staleAfterSeconds, gas: quantity };
  // Oxygen at the end of its scale is too much oxygen, which has a limit of its own.
  return possibleHigh === null || quantity === 'oxygen' ? about : { ...about, fullScale: possibleHigh };
}

/** The limits that the shop chose; the strictest of all where it chose none. */
export function profileOf({ airProfile, airCustomLimits }: ShopSettings): LimitProfile {
  if (airProfile !== 'custom') return limitProfile(airProfile);
  return airCustomLimits === null ? limitProfile('strictest') : customProfile(given(airCustomLimits));
}

function given({ source, ...limits }: NonNullable<ShopSettings['airCustomLimits']>): CustomLimits {
  const named = Object.entries(limits).filter(([, ppm]) => ppm !== undefined);
  return { source, ...Object.fromEntries(named) };
}

export function dayConfig(archive: Known, gases: readonly GasChannel[]): DayConfig {
  const { settings } = archive.shop();
  return {
    channels: gases.map(dayChannel),
    furnaces: dayFurnaces(archive),
    hotAboveCelsius: settings.hotAboveCelsius,
    profile: profileOf(settings),
    blood: {
      chosen: cohbConstants(settings.workRate),
      light: cohbConstants('light'),
      heavy: cohbConstants('heavy'),
    },
  };
}

function dayChannel(channel: GasChannel): DayChannel {
  const { id, label, name, quantity, staleAfterSeconds, calibrationDueAt, endOfLifeAt } = channel;
  return { id, label: label || name, gas: quantity, staleAfterSeconds, calibrationDueAt, endOfLifeAt };
}

function dayFurnaces(archive: Known): DayFurnace[] {
  const channels = adoptedChannels(archive, ({ furnaceId }) => furnaceId !== null);
  return archive
    .furnaces()
    .filter((furnace) => !furnace.archived)
    .map(({ id, name, kind }) => {
      const own = channels.filter(({ furnaceId }) => furnaceId === id);
      return {
        id,
        name,
        kind,
        chambers: own
          .filter(({ role, quantity }) => role === 'chamber' && quantity === 'temperature')
          .map(heard),
        pressures: own.filter(({ role }) => role === 'supply-pressure').map(heard),
      };
    })
    .filter(({ chambers }) => chambers.length > 0);
}

function heard({ id, staleAfterSeconds }: Channel): DayFurnace['chambers'][number] {
  return { id, staleAfterSeconds };
}

/** Every channel that the day's judge listens to. */
export function heardOf(config: DayConfig): readonly { readonly id: string }[] {
  const furnaces = config.furnaces.flatMap(({ chambers, pressures }) => [...chambers, ...pressures]);
  return [...config.channels, ...furnaces];
}
