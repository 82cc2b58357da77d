import { airCells, CELL_MS, cellEdge } from '../air/cell.ts';
import type { Archive } from '../archive/types.ts';
import type { Firing } from '../contract/firing.ts';
import type { GasUsed } from '../contract/gas.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { gasUsedText } from '../contract/words/en-gas.ts';
import { firingGas } from '../gas/firing-gas.ts';
import type { GasCell, GasConfig, GasSupply } from '../gas/types.ts';
import { gasHeard, supplyOfFurnace } from './gas-config.ts';
import { readingsOf } from './shop-inputs.ts';

type FiringSpan = Pick<Firing, 'id' | 'furnaceId' | 'startedAt' | 'endedAt' | 'pieces'>;

/** A finished firing whose gas was added up, until a reading comes for it. */
interface Kept {
  readonly from: number;
  readonly to: number;
  readonly used: GasUsed | null;
}

const MOST_KEPT = 200;

/**
 * What firings burned, out of the archive: about 10 ms an hour of firing at one reading a second, done once for a
 * finished firing and again when a late reading falls into it.
 */
export class GasUse {
  readonly #archive: Archive;
  readonly #config: GasConfig;
  readonly #kept = new Map<string, Kept>();

  constructor(archive: Archive, config: GasConfig) {
    this.#archive = archive;
    this.#config = config;
  }

  /** A reading that falls into a firing that was added up: it is added up again when next asked for. */
  learned({ at }: ChannelReading): void {
    for (const [id, { from, to }] of this.#kept) {
      if (at >= from && at <= to) this.#kept.delete(id);
    }
  }

  /** Null: the gas of its furnace is not set up, or nothing was measured of it. */
  used(firing: FiringSpan, now: number): GasUsed | null {
    const supply = supplyOfFurnace(this.#config, firing.furnaceId);
    if (supply === undefined) return null;
    const { gasPricePerKilogram: price, currency } = this.#archive.shop().settings;
    const key = JSON.stringify([firing.id, firing.endedAt, price, currency]);
    const kept = this.#kept.get(key);
    if (kept !== undefined) return kept.used;
    const used = this.#added(firing, supply, firing.endedAt ?? now);
    if (firing.endedAt !== null && this.#kept.size < MOST_KEPT) {
      this.#kept.set(key, { from: firing.startedAt, to: firing.endedAt, used });
    }
    return used;
  }

  #added(firing: FiringSpan, supply: GasSupply, to: number): GasUsed | null {
    const furnace = supply.furnaces.find(({ id }) => id === firing.furnaceId);
    if (furnace === undefined) return null;
    const { gasPricePerKilogram, currency } = this.#archive.shop().settings;
    const used = firingGas({
      config: this.#config,
      supply,
      furnace,
      cells: this.#cells(supply, cellEdge(firing.startedAt), cellEdge(to + CELL_MS - 1)),
      pieces: firing.pieces.map(({ pieceId, mark, section }) => {
        return { pieceId, mark, kilograms: section.massKilograms };
      }),
      pricePerKilogram: gasPricePerKilogram,
      currency,
    });
    return used === null ? null : { ...used, text: gasUsedText(used) };
  }

  *#cells(supply: GasSupply, after: number, upTo: number): Generator<GasCell> {
    const heard = gasHeard({ ...this.#config, supplies: [supply] });
    const readings = readingsOf(this.#archive, heard, after, upTo);
    for (const { from, to, values } of airCells(readings, after, upTo, () => null)) {
      yield { from, to, values, firings: [], fills: [], afterClosing: null };
    }
  }
}
