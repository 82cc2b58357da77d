import type { Archive } from '../archive/types.ts';
import type { Channel, Furnace } from '../contract/shop.ts';
import type { GasConfig, GasFurnace, GasSupply, Heard } from '../gas/types.ts';
import { adoptedChannels } from './shop-inputs.ts';

/** What the judge of the gas is told about this shop: furnaces whose burners a person has entered, and no others. */

type Known = Pick<Archive, 'channels' | 'furnaces' | 'shop'>;
type FurnaceWithGas = Furnace & { readonly gas: NonNullable<Furnace['gas']> };

/** The supply of all furnaces that have no scale of their own. */
export const SHOP_SUPPLY = 'shop';

export function gasConfig(archive: Known): GasConfig {
  const { settings } = archive.shop();
  const channels = adoptedChannels(archive, () => true);
  const furnaces = archive.furnaces().filter(burns);
  const own = furnaces.filter(({ id }) =>
    channels.some((channel) => isScale(channel) && channel.furnaceId === id),
  );
  const others = furnaces.filter((furnace) => !own.includes(furnace));
  const supplies = own.map((furnace) => supplyOf(furnace.id, [furnace], channels));
  if (others.length > 0) supplies.push(supplyOf(SHOP_SUPPLY, others, channels));
  return {
    supplies,
    hotAboveCelsius: settings.hotAboveCelsius,
    tareKilograms: settings.gasTareKilograms,
    cylinderKilograms: settings.gasCylinderKilograms,
    cylinders: settings.gasCylinders,
  };
}

function burns(furnace: Furnace): furnace is FurnaceWithGas {
  return furnace.gas !== null && !furnace.archived;
}

function isScale({ role }: Channel): boolean {
  return role === 'cylinder-mass';
}

function supplyOf(id: string, furnaces: readonly FurnaceWithGas[], channels: readonly Channel[]): GasSupply {
  const ids = new Set<string | null>(furnaces.map((furnace) => furnace.id));
  // What hangs on no furnace hangs on the shop's supply.
  const mine = channels.filter(
    ({ furnaceId }) => ids.has(furnaceId) || (id === SHOP_SUPPLY && furnaceId === null),
  );
  const of = (role: Channel['role']): Heard[] => mine.filter((channel) => channel.role === role).map(heard);
  return {
    id,
    furnaces: furnaces.map((furnace) => furnaceOf(furnace, channels)),
    scales: of('cylinder-mass'),
    cylinderPressures: of('cylinder-pressure'),
    walls: of('cylinder-wall'),
  };
}

function furnaceOf({ id, name, gas }: FurnaceWithGas, channels: readonly Channel[]): GasFurnace {
  const own = channels.filter(({ furnaceId }) => furnaceId === id);
  const shared = channels.filter(({ furnaceId, role }) => furnaceId === null && role === 'supply-pressure');
  const pressures = own.filter(({ role }) => role === 'supply-pressure');
  return {
    id,
    name,
    gas,
    // A gauge on the line of the shop stands for every furnace that has none of its own.
    pressures: (pressures.length > 0 ? pressures : shared).map(heard),
    chambers: own.filter(({ role, quantity }) => role === 'chamber' && quantity === 'temperature').map(heard),
  };
}

function heard({ id, staleAfterSeconds }: Channel): Heard {
  return { id, staleAfterSeconds };
}

/** Every channel that the judge listens to. */
export function gasHeard(config: GasConfig): readonly Heard[] {
  const all = config.supplies.flatMap(({ furnaces, scales, cylinderPressures, walls }) => [
    ...furnaces.flatMap(({ pressures, chambers }) => [...pressures, ...chambers]),
    ...scales,
    ...cylinderPressures,
    ...walls,
  ]);
  return [...new Map(all.map((each) => [each.id, each])).values()];
}

/** The supply that feeds a furnace; undefined: its gas is not set up. */
export function supplyOfFurnace(config: GasConfig, furnaceId: string): GasSupply | undefined {
  return config.supplies.find(({ furnaces }) => furnaces.some(({ id }) => id === furnaceId));
}
