/**
 * Rockwell C to Vickers and back, ASTM E140 table 1 (non-austenitic steel).
 *
 * Inside the table only. Below 20 HRC the scale is not defined: the answer is
 * "below scale", never an extrapolated number.
 */
import { PhysicsError } from '../errors.ts';
import type { Provenance } from './estimate.ts';

const LOWEST_HRC = 20;

/** Vickers hardness at 20, 21 … 68 HRC. */
const HV_FROM_20_HRC: readonly number[] = [
  238, 243, 248, 254, 260, 266, 272, 279, 286, 294, 302, 310, 318, 327, 336, 345, 354, 363, 372, 382, 392,
  402, 412, 423, 434, 446, 458, 471, 484, 498, 513, 528, 544, 560, 577, 595, 613, 633, 653, 674, 697, 720,
  746, 772, 800, 832, 865, 900, 940,
];
const HIGHEST_HRC = LOWEST_HRC + HV_FROM_20_HRC.length - 1;

/** From here up three copies of the table were seen; below, the numbers are recalled. */
const SEEN_FROM_HRC = 35;

export type ScaleReading =
  | { readonly outcome: 'converted'; readonly value: number; readonly from: Provenance }
  | { readonly outcome: 'below-scale' | 'above-scale' };

function provenance(hrc: number): Provenance {
  return hrc >= SEEN_FROM_HRC
    ? { standing: 'published-secondary', source: 'ASTM E140 table 1, three copies' }
    : { standing: 'from-memory', source: 'ASTM E140 table 1 below 35 HRC' };
}

/**
 * Vickers hardness of a Rockwell C hardness, straight lines between table rows.
 *
 * @param hrc 20 to 68; outside, `below-scale` or `above-scale`
 * @throws PhysicsError `bad-input` when it is no number
 */
export function hrcToHv(hrc: number): ScaleReading {
  requireNumber('Rockwell C hardness', hrc);
  if (hrc < LOWEST_HRC) return { outcome: 'below-scale' };
  if (hrc > HIGHEST_HRC) return { outcome: 'above-scale' };
  const row = Math.min(Math.floor(hrc), HIGHEST_HRC - 1);
  const [left, right] = rows(row);
  return { outcome: 'converted', value: left + (hrc - row) * (right - left), from: provenance(hrc) };
}

/**
 * Rockwell C hardness of a Vickers hardness, the exact inverse of {@link hrcToHv}.
 *
 * @param hv 238 to 940; outside, `below-scale` or `above-scale`
 * @throws PhysicsError `bad-input` when it is no number
 */
export function hvToHrc(hv: number): ScaleReading {
  requireNumber('Vickers hardness', hv);
  const above = HV_FROM_20_HRC.findIndex((row) => row >= hv);
  if (above < 0) return { outcome: 'above-scale' };
  if (above === 0 && hv < (HV_FROM_20_HRC[0] ?? hv)) return { outcome: 'below-scale' };
  const row = LOWEST_HRC + Math.max(above - 1, 0);
  const [left, right] = rows(row);
  const value = row + (hv - left) / (right - left);
  return { outcome: 'converted', value, from: provenance(value) };
}

/** Vickers values of an HRC row and the next. */
function rows(hrc: number): readonly [number, number] {
  const left = HV_FROM_20_HRC[hrc - LOWEST_HRC];
  const right = HV_FROM_20_HRC[hrc - LOWEST_HRC + 1];
  if (left === undefined || right === undefined) {
    throw new PhysicsError('out-of-range', `No row for ${hrc} HRC in ASTM E140 table 1`, { hrc });
  }
  return [left, right];
}

function requireNumber(name: string, value: number): void {
  if (!Number.isNaN(value)) return;
  throw new PhysicsError('bad-input', `${name} is not a number`, { name });
}
