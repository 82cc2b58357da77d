/**
 * How hot a probe of a given size should run.
 */

import { PhysicsError } from './errors.ts';
import { type LimitRow, mineralInsulatedLimits, protectedWireLimits } from './probe-limits-table.ts';
import type { ProbeProvenance } from './probe-provenance.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';

/** `protected-wire`: bare wires in a closed tube; `mineral-insulated`: compacted metal-sheathed cable. */
export type ProbeConstruction = 'protected-wire' | 'mineral-insulated';

export interface ProbeSize {
  readonly type: ThermocoupleType;
  readonly construction: ProbeConstruction;
  /** Wire diameter, or sheath diameter of a mineral-insulated probe, mm, above 0. */
  readonly millimetres: number;
}

export interface UpperLimit {
  readonly celsius: number;
  /** The listed size the limit belongs to, mm: the same, or the next finer one. */
  readonly listedMillimetres: number;
  readonly from: ProbeProvenance;
}

/**
 * Wire sold by metric size is a little finer than the gauge it stands for (0.5 mm
 * for 0.511 mm, 0.8 mm for 0.812 mm), sheath in inches a little thicker than its
 * metric name. Our choice, common practice.
 */
const sizeTolerance = 0.05;

/**
 * Recommended upper temperature of a probe by its size.
 *
 * A size between two listed ones takes the finer, so the lower limit; one thicker
 * than all listed takes the thickest. A guide to life and stability only.
 *
 * @throws PhysicsError `bad-input` for a size that is not positive;
 *   `not-applicable` when the type is not listed in this construction or the size
 *   is finer than any listed
 *
 * Source: ASTM E230 Table 6 and ASTM E608 Table 1; each number carries its standing.
 */
export function recommendedUpperLimit(probe: ProbeSize): UpperLimit {
  const { type, construction, millimetres } = probe;
  if (!(millimetres > 0)) {
    throw new PhysicsError('bad-input', `diameter is ${millimetres} mm, must be above 0`, { millimetres });
  }
  const rows = rowsOf(construction).filter((row) => row.types.includes(type));
  const row = rows.find((each) => each.millimetres <= millimetres * (1 + sizeTolerance));
  if (row === undefined) throw notListed(probe, rows);
  return { celsius: row.celsius, listedMillimetres: row.millimetres, from: row.from };
}

function rowsOf(construction: ProbeConstruction): readonly LimitRow[] {
  switch (construction) {
    case 'protected-wire':
      return protectedWireLimits;
    case 'mineral-insulated':
      return mineralInsulatedLimits;
    default:
      return construction satisfies never;
  }
}

function notListed(probe: ProbeSize, rows: readonly LimitRow[]): PhysicsError {
  const { type, construction, millimetres } = probe;
  const finest = rows.at(-1)?.millimetres;
  const message =
    finest === undefined
      ? `no recommended limit is listed for a ${construction} probe of type ${type}`
      : `${millimetres} mm is finer than the finest listed ${construction} probe of type ${type}, ${finest} mm`;
  return new PhysicsError('not-applicable', message, { type, construction, millimetres });
}
