/**
 * Check values of the critical-temperature formulas, °C.
 *
 * Source: computed independently from the published formulas (Andrews 1965,
 * Grange 1961, Hougardy 1984, van Bohemen 2012, Ingber & Kunert 2022) for
 * mid-range compositions. `bracketed` marks an Ac3 at or below Ac1, which lies
 * outside the formula's validity.
 */
import type { Composition } from '../../hub/physics/steel/composition.ts';

export interface CriticalRow {
  readonly steel: string;
  readonly composition: Composition;
  readonly andrewsAc1: number;
  readonly andrewsAc3: number;
  readonly grangeAc1: number;
  readonly grangeAc3: number;
  readonly hougardyAc1: number;
  readonly hougardyAc3: number;
  readonly msLinear: number;
  readonly msProduct: number;
  readonly msVanBohemen: number;
  readonly msIngber: number;
  readonly bracketed: readonly ('andrews' | 'grange' | 'hougardy')[];
}

function row(
  steel: string,
  composition: Composition,
  v: readonly [number, number, number, number, number, number, number, number, number, number],
  bracketed: CriticalRow['bracketed'] = [],
): CriticalRow {
  const [andrewsAc1, andrewsAc3, grangeAc1, grangeAc3, hougardyAc1, hougardyAc3] = v;
  const [, , , , , , msLinear, msProduct, msVanBohemen, msIngber] = v;
  return {
    steel,
    composition,
    andrewsAc1,
    andrewsAc3,
    grangeAc1,
    grangeAc3,
    hougardyAc1,
    hougardyAc3,
    msLinear,
    msProduct,
    msVanBohemen,
    msIngber,
    bracketed,
  };
}

export const CRITICAL_ROWS: readonly CriticalRow[] = [
  row(
    '1045',
    { C: 0.45, Mn: 0.75, Si: 0.25 },
    [722.2, 762.5, 717.9, 774.4, 724.4, 783.8, 325.8, 328.0, 328.0, 344.9],
  ),
  row(
    '1060',
    { C: 0.6, Mn: 0.75, Si: 0.25 },
    [722.2, 741.4, 717.9, 747.5, 721.0, 745.5, 262.4, 286.1, 275.8, 294.9],
  ),
  row(
    '1075',
    { C: 0.75, Mn: 0.55, Si: 0.25 },
    [724.4, 728.9, 720.7, 723.3, 719.1, 709.5, 205.0, 264.8, 236.8, 252.8],
    ['hougardy'],
  ),
  row(
    '1080',
    { C: 0.8, Mn: 0.75, Si: 0.25 },
    [722.2, 717.1, 717.9, 711.6, 716.6, 694.5, 177.8, 245.6, 216.9, 229.4],
    ['andrews', 'grange', 'hougardy'],
  ),
  row(
    '1084',
    { C: 0.85, Mn: 0.75, Si: 0.25 },
    [722.2, 711.5, 717.9, 702.6, 715.5, 681.8, 156.6, 238.2, 203.8, 213.3],
    ['andrews', 'grange', 'hougardy'],
  ),
  row(
    '1095',
    { C: 0.95, Mn: 0.4, Si: 0.25 },
    [726.0, 711.3, 722.8, 689.5, 715.8, 660.1, 125.0, 250.3, 190.4, 193.6],
    ['andrews', 'grange', 'hougardy'],
  ),
  row(
    '5160',
    { C: 0.6, Mn: 0.88, Si: 0.25, Cr: 0.8 },
    [734.4, 728.7, 734.8, 744.3, 731.3, 740.1, 248.8, 260.1, 263.8, 273.6],
    ['andrews'],
  ),
  row(
    '52100',
    { C: 1, Mn: 0.35, Si: 0.25, Cr: 1.45 },
    [751.0, 691.7, 757.3, 678.8, 735.3, 640.6, 87.8, 174.7, 166.1, 149.3],
    ['andrews', 'grange', 'hougardy'],
  ),
  row(
    '9260',
    { C: 0.6, Mn: 0.88, Si: 2 },
    [771.8, 815.8, 755.0, 823.4, 723.6, 777.3, 258.4, 280.6, 249.0, 278.3],
  ),
  row(
    '4140',
    { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 },
    [736.9, 762.2, 738.3, 780.0, 740.4, 792.9, 330.1, 327.0, 331.2, 335.4],
  ),
  row(
    '4340',
    { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.83, Cr: 0.8, Mo: 0.25 },
    [705.4, 743.0, 710.8, 750.2, 716.5, 759.7, 304.6, 302.6, 304.8, 312.9],
  ),
  row(
    '6150',
    { C: 0.5, Mn: 0.8, Si: 0.25, Cr: 0.95, V: 0.15 },
    [737.8, 758.8, 739.4, 763.1, 739.2, 774.0, 291.7, 293.3, 298.7, 306.6],
  ),
  row(
    'O1',
    { C: 0.9, Mn: 1.2, Si: 0.3, Cr: 0.5, W: 0.5 },
    [730.5, 695.9, 724.4, 688.8, 718.4, 662.5, 115.8, 179.9, 171.8, 170.5],
    ['andrews', 'grange', 'hougardy'],
  ),
  row(
    '80CrV2',
    { C: 0.8, Mn: 0.4, Si: 0.3, Cr: 0.55, V: 0.2 },
    [736.7, 744.6, 736.7, 717.7, 730.9, 707.6, 181.8, 244.1, 221.6, 230.1],
    ['grange', 'hougardy'],
  ),
  row(
    '15N20',
    { C: 0.75, Mn: 0.4, Si: 0.25, Ni: 2 },
    [692.2, 703.0, 693.9, 689.9, 694.2, 671.1, 174.2, 239.1, 205.4, 223.7],
    ['grange', 'hougardy'],
  ),
];
