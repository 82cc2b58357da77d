import { FurnaceGas } from '../../hub/contract/gas.ts';
import { ShopSettings } from '../../hub/contract/shop.ts';
import { MORNING } from '../harness/shop.ts';
import type { ScenarioOptions } from './scenario.ts';

/** How much of the gas a shop measures: the pressure alone, a scale too, gauge and thermocouple on the cylinder too. */
export type Measured = 'pressure' | 'scale' | 'whole';

type Options = Pick<ScenarioOptions, 'prepare' | 'fittings'>;

/** The simulated forge with its own jet entered, and the pressures that its smith works with. Clock of UTC. */
export function gasFitted(measured: Measured, closingTime: string | null = null): Options {
  return {
    fittings: measured === 'whole' ? ['cylinder-gauges'] : [],
    prepare: ({ archive, watch }, { forge }) => {
      const burner = FurnaceGas.parse({ boreMm: 0.889, lowPascals: 5000, highPascals: 100_000 });
      archive.saveFurnace({ ...forge, gas: burner }, MORNING);
      const scale = measured === 'pressure' ? {} : { gasTareKilograms: 0 };
      const about = { ...scale, closingTime, timeZone: 'UTC', gasCylinderKilograms: 9 };
      archive.saveSettings(ShopSettings.parse({ ...archive.shop().settings, ...about }), MORNING);
      const channel = { node: 'forge-node', label: '', unit: null, furnaceId: forge.id };
      const range = { possibleLow: null, possibleHigh: null, staleAfterSeconds: 20 };
      const more = [
        { name: 'cylinder-pressure', quantity: 'pressure', role: 'cylinder-pressure' },
        { name: 'cylinder-wall', quantity: 'temperature', role: 'cylinder-wall' },
      ] as const;
      if (measured === 'whole')
        for (const each of more) archive.createChannel({ ...channel, ...range, ...each }, MORNING);
      watch.setupChanged();
    },
  };
}
