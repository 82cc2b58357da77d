import {
  OTHER_GAS_LIMITS,
  type OtherGas,
  type OtherGasLimit,
} from '../physics/ventilation/other-gas-limits.ts';
import type { AirConfig, AirGas, LevelKind } from './types.ts';

/** Which limits on the instant reading a gas has, in its base unit: ppm, oxygen in %. */

export interface LevelLimit {
  readonly kind: LevelKind;
  readonly value: number;
  readonly side: 'above' | 'below';
}

/** An averaged limit is taken on the instant reading: stricter than the body that set it, and never later. */
const CO2_FIRST = row('carbon-dioxide', 'twa').ppm;
const CO2_SECOND = row('carbon-dioxide', 'stel').ppm;
const OXYGEN = OTHER_GAS_LIMITS.filter((limit) => limit.gas === 'oxygen');
const PPM_PER_PERCENT = 10_000;

function row(gas: OtherGas, use: OtherGasLimit['use']): OtherGasLimit {
  const found = OTHER_GAS_LIMITS.find((limit) => limit.gas === gas && limit.use === use);
  if (found === undefined) throw new Error(`limit-missing: the table has no ${use} for ${gas}`);
  return found;
}

const OTHERS: readonly LevelLimit[] = [
  { kind: 'unsafe-air-carbon-dioxide-second', value: CO2_SECOND, side: 'above' },
  { kind: 'unsafe-air-carbon-dioxide-first', value: CO2_FIRST, side: 'above' },
];

const OXYGEN_LIMITS: readonly LevelLimit[] = OXYGEN.map(({ ppm, side }) => ({
  kind: side === 'below' ? 'unsafe-air-low-oxygen' : 'unsafe-air-high-oxygen',
  value: ppm / PPM_PER_PERCENT,
  side,
}));

export function levelLimits(config: AirConfig, gas: AirGas): readonly LevelLimit[] {
  switch (gas) {
    case 'carbon-monoxide':
      return carbonMonoxide(config);
    case 'carbon-dioxide':
      return OTHERS;
    case 'oxygen':
      return OXYGEN_LIMITS;
    default:
      throw gas satisfies never;
  }
}

function carbonMonoxide({ firstPpm, secondPpm, ceilingPpm, idlhPpm }: AirConfig): LevelLimit[] {
  const given: readonly (readonly [LevelKind, number | undefined])[] = [
    ['unsafe-air-idlh', idlhPpm],
    ['unsafe-air-second', secondPpm],
    ['unsafe-air-ceiling', ceilingPpm],
    ['unsafe-air-first', firstPpm],
  ];
  return given.flatMap(([kind, value]) => (value === undefined ? [] : [{ kind, value, side: 'above' }]));
}
