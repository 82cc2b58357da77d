/**
 * Arrests on heating and cooling at 28 °C/h, °C.
 *
 * From memory: ASM Handbook vol. 4 (1991), "Annealing of steel", table 1; each
 * value ±5 °C. Compositions: the middle of the SAE range.
 */
import type { Composition } from '../../hub/physics/steel/composition.ts';

export interface ArrestRow {
  readonly steel: string;
  readonly composition: Composition;
  readonly ac1: number;
  readonly ac3: number;
  readonly ar3: number;
  readonly ar1: number;
}

function row(
  steel: string,
  composition: Composition,
  v: readonly [number, number, number, number],
): ArrestRow {
  const [ac1, ac3, ar3, ar1] = v;
  return { steel, composition, ac1, ac3, ar3, ar1 };
}

export const ARREST_ROWS: readonly ArrestRow[] = [
  row('1040', { C: 0.4, Mn: 0.75, Si: 0.25 }, [725, 795, 755, 670]),
  row('1050', { C: 0.515, Mn: 0.75, Si: 0.25 }, [725, 770, 740, 680]),
  row('1060', { C: 0.6, Mn: 0.75, Si: 0.25 }, [725, 765, 745, 685]),
  row('1070', { C: 0.7, Mn: 0.75, Si: 0.25 }, [725, 730, 710, 690]),
  row('1080', { C: 0.8, Mn: 0.75, Si: 0.25 }, [730, 735, 700, 695]),
  row('4140', { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 }, [730, 805, 745, 680]),
  row('4340', { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.83, Cr: 0.8, Mo: 0.25 }, [725, 775, 710, 655]),
  row('5160', { C: 0.6, Mn: 0.88, Si: 0.25, Cr: 0.8 }, [710, 765, 715, 675]),
  row('52100', { C: 1, Mn: 0.35, Si: 0.25, Cr: 1.45 }, [725, 770, 715, 690]),
  row('9260', { C: 0.6, Mn: 0.88, Si: 2 }, [745, 815, 750, 715]),
];
