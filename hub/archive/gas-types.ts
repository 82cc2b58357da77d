import type { GasChange } from '../contract/gas.ts';

/** A number with its range, kg. */
interface Band {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** What a count since a noted fill had come to. */
export interface GasCount {
  readonly atMs: number;
  readonly fill: Band;
  readonly drawn: Band;
  readonly last: { readonly atMs: number; readonly kilogramsPerHour: number } | null;
  readonly unknownSeconds: number;
}

/** What the archive keeps about the gas beside its readings. */
export interface GasStore {
  /** The newest first. */
  gasChanges(limit: number): readonly GasChange[];
  /** Counts kept from that instant on no longer hold and are forgotten. */
  addGasChange(change: Omit<GasChange, 'id'>): GasChange;
  /** False: there is none of this id. Forgets the counts kept since. */
  removeGasChange(id: string): boolean;
  /** Keeps a count at its own instant; the dozen newest of a supply stay. */
  keepGasCount(supply: string, count: GasCount): void;
  /** The newest of a supply at or before an instant. */
  gasCount(supply: string, at: number): GasCount | null;
}
