/**
 * Limits for the other gases that a shop may watch beside carbon monoxide.
 *
 * A limit is a ceiling on risk and never a line below which air is good.
 */
import type { Provenance } from '../carbon-monoxide/provenance.ts';

export const OTHER_GASES = [
  'carbon-dioxide',
  'oxygen',
  'nitric-oxide',
  'nitrogen-dioxide',
  'propane',
] as const;
export type OtherGas = (typeof OTHER_GASES)[number];

export interface OtherGasLimit {
  readonly gas: OtherGas;
  readonly body: string;
  readonly use: 'twa' | 'stel' | 'ceiling' | 'idlh' | 'hazardous-atmosphere';
  /** ppm by volume; oxygen too (195 000 ppm is 19.5 %). */
  readonly ppm: number;
  /** `below`: dangerous under the value. */
  readonly side: 'above' | 'below';
  readonly from: Provenance;
}

const seen = (source: string): Provenance => ({ standing: 'published-secondary', source });
const memory = (source: string): Provenance => ({ standing: 'from-memory', source });

const CO2 = seen('secondary tables; DGUV for the German AGW');
const CONFINED = seen('29 CFR 1910.146 definition, quoted');
const NIOSH_NO2 = seen('NIOSH IDLH page for nitrogen dioxide');
const NIOSH_NO = seen('NIOSH IDLH page for nitric oxide');
const EU_2017 = memory('Directive (EU) 2017/164');
const NIOSH_PROPANE = seen('NIOSH');

type Line = readonly [OtherGas, string, OtherGasLimit['use'], number, Provenance, OtherGasLimit['side']?];

const LINES: readonly Line[] = [
  ['carbon-dioxide', 'OSHA, ACGIH, EU, Germany', 'twa', 5000, CO2],
  ['carbon-dioxide', 'NIOSH, ACGIH', 'stel', 30_000, { ...CO2, note: 'the bodies from memory' }],
  ['carbon-dioxide', 'NIOSH', 'idlh', 40_000, CO2],
  ['oxygen', 'OSHA', 'hazardous-atmosphere', 195_000, CONFINED, 'below'],
  ['oxygen', 'OSHA', 'hazardous-atmosphere', 235_000, CONFINED],
  ['nitric-oxide', 'OSHA, NIOSH', 'twa', 25, NIOSH_NO],
  ['nitric-oxide', 'NIOSH', 'idlh', 100, NIOSH_NO],
  ['nitric-oxide', 'European Union', 'twa', 2, EU_2017],
  ['nitrogen-dioxide', 'OSHA', 'ceiling', 5, NIOSH_NO2],
  ['nitrogen-dioxide', 'NIOSH', 'stel', 1, NIOSH_NO2],
  ['nitrogen-dioxide', 'European Union', 'twa', 0.5, EU_2017],
  ['nitrogen-dioxide', 'European Union', 'stel', 1, EU_2017],
  ['nitrogen-dioxide', 'ACGIH', 'twa', 0.2, memory('ACGIH TLVs')],
  ['propane', 'OSHA, NIOSH', 'twa', 1000, NIOSH_PROPANE],
  // A tenth of the lower flammable limit, where any flammable gas makes an atmosphere hazardous.
  ['propane', 'NIOSH', 'idlh', 2100, NIOSH_PROPANE],
];

/** Every row. */
export const OTHER_GAS_LIMITS: readonly OtherGasLimit[] = LINES.map(
  ([gas, body, use, ppm, from, side = 'above']) => ({ gas, body, use, ppm, side, from }),
);
