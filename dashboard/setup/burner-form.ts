import type { FurnaceGas } from '../../hub/contract/gas.ts';
import { fromBase, toBase, type Unit } from '../../hub/contract/units.ts';
import { readNumber } from '../parts/number-entry.ts';
import type { Reader } from './read-texts.ts';

/** The burners of a furnace as texts; pressures in the unit of the shop. */
export interface BurnerTexts {
  readonly bore: string;
  readonly coefficient: string;
  readonly burners: string;
  readonly low: string;
  readonly high: string;
}

const EMPTY: BurnerTexts = { bore: '', coefficient: '0.85', burners: '1', low: '', high: '' };

export function burnerTexts(gas: FurnaceGas | null, unit: Unit): BurnerTexts {
  if (gas === null) return EMPTY;
  const shown = (pascals: number | null) =>
    pascals === null ? '' : String(Number(fromBase(pascals, unit).toPrecision(4)));
  return {
    bore: String(gas.boreMm),
    coefficient: String(gas.dischargeCoefficient),
    burners: String(gas.burners),
    low: shown(gas.lowPascals),
    high: shown(gas.highPascals),
  };
}

/** What goes into the draft under `gas`: null without a bore, since then its gas is not judged. */
export function readBurner(texts: BurnerTexts, unit: Unit, reader: Reader): object | null {
  if (texts.bore.trim() === '') return null;
  const pascals = (path: string, text: string): number | null => {
    const value = reader.take(path, text, readNumber(text)) ?? null;
    return value === null ? null : Number(toBase(value, unit).toPrecision(6));
  };
  return {
    boreMm: reader.number('gas.boreMm', texts.bore),
    dischargeCoefficient: reader.number('gas.dischargeCoefficient', texts.coefficient),
    burners: reader.number('gas.burners', texts.burners),
    lowPascals: pascals('gas.lowPascals', texts.low),
    highPascals: pascals('gas.highPascals', texts.high),
  };
}
