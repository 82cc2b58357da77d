/** One printed limit for carbon monoxide in air, as the body that set it states it. */
import type { Provenance } from './provenance.ts';

/**
 * What a row is for.
 * - `twa`: mean over a working day
 * - `stel`: mean over a short time, not to be exceeded at any time of the day
 * - `ceiling`: not to be exceeded at all
 * - `excursion`: how far a short peak may go above a day's limit
 * - `removal`: people are taken out above it
 * - `idlh`: immediately dangerous to life or health
 * - `ambient`: for the general public, outdoors or at home
 * - `emergency`: for rare releases, planning only
 */
export type LimitUse =
  | 'twa'
  | 'stel'
  | 'ceiling'
  | 'excursion'
  | 'removal'
  | 'idlh'
  | 'ambient'
  | 'emergency';

/** Whether the row speaks today. `superseded` rows are kept because they are still quoted. */
export type LimitForce = 'in-force' | 'guideline' | 'superseded';

export interface LimitRow {
  readonly id: string;
  readonly body: string;
  readonly use: LimitUse;
  /** null where the body states mass only. */
  readonly ppm: number | null;
  /** As printed, null where not printed. */
  readonly milligramsPerCubicMetre: number | null;
  /** 0 is the instant. */
  readonly averagingSeconds: number;
  readonly edition: string;
  readonly force: LimitForce;
  readonly from: Provenance;
}

/** What the rows of one edition of one body share. */
export type LimitEdition = Pick<LimitRow, 'body' | 'edition' | 'force' | 'from'>;

/** One line of a table: id, use, ppm, mg/m³, averaging time in s, and a remark on this line alone. */
export type LimitLine = readonly [
  id: string,
  use: LimitUse,
  ppm: number | null,
  milligramsPerCubicMetre: number | null,
  averagingSeconds: number,
  note?: string,
];

/** Spells the lines of one edition out. */
export function limitRows(edition: LimitEdition, lines: readonly LimitLine[]): LimitRow[] {
  return lines.map(([id, use, ppm, milligramsPerCubicMetre, averagingSeconds, note]) => ({
    ...edition,
    id,
    use,
    ppm,
    milligramsPerCubicMetre,
    averagingSeconds,
    from: note === undefined ? edition.from : { ...edition.from, note },
  }));
}

export const INSTANT = 0;
export const MINUTE_SECONDS = 60;
export const HOUR_SECONDS = 3600;
