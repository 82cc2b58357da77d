import type { Archive, IncomingReading } from '../archive/types.ts';
import type { Catalogue } from './catalogue.ts';

/** Terminals warm over minutes: a junction reading serves the emf of the minute after it. Common practice, no source. */
export const JUNCTION_AGE_MS = 60_000;

/** What is known of the temperature of terminals, payload by payload. */
export interface Junctions {
  /** Remembers the good readings of junction channels among these. */
  hear(node: string, readings: readonly IncomingReading[]): void;
  /** The newest good reading at or before the instant and not older than `JUNCTION_AGE_MS` then, °C. */
  before(node: string, name: string, at: number): number | undefined;
}

interface Heard {
  readonly at: number;
  readonly value: number;
}

/**
 * What was heard is remembered here, since the payload before may still wait for its commit; what came longer ago,
 * or before a restart, is in the archive. Bounded by the number of junction channels.
 */
export function createJunctions(
  archive: Pick<Archive, 'readings'>,
  catalogue: Pick<Catalogue, 'isJunction' | 'temperatureId'>,
): Junctions {
  const newest = new Map<string, Heard>();

  function fromArchive(node: string, name: string, at: number): number | undefined {
    const id = catalogue.temperatureId(node, name);
    if (id === undefined) return undefined;
    const kept = archive.readings.range(id, at - JUNCTION_AGE_MS, at);
    return kept.findLast(({ quality }) => quality === 'good')?.value;
  }

  return {
    hear(node, readings) {
      for (const { name, at, value, quality, quantity } of readings) {
        if (quality !== 'good' || quantity !== 'temperature' || !catalogue.isJunction(node, name)) continue;
        const key = `${node}/${name}`;
        if (at >= (newest.get(key)?.at ?? Number.NEGATIVE_INFINITY)) newest.set(key, { at, value });
      }
    },
    before(node, name, at) {
      const heard = newest.get(`${node}/${name}`);
      const serves = heard !== undefined && heard.at <= at && at - heard.at <= JUNCTION_AGE_MS;
      return serves ? heard.value : fromArchive(node, name, at);
    },
  };
}

/** The readings of one payload that can tell the temperature of terminals, by name. */
export type PackTemperatures = ReadonlyMap<string, readonly IncomingReading[]>;

/** One from the future counts: both come from one clock, and the value is not in doubt, only its instant. */
export function temperaturesOf(readings: readonly IncomingReading[]): PackTemperatures {
  const found = new Map<string, IncomingReading[]>();
  for (const reading of readings) {
    if (reading.quality === 'bad' || reading.quantity !== 'temperature') continue;
    const before = found.get(reading.name);
    if (before) before.push(reading);
    else found.set(reading.name, [reading]);
  }
  return found;
}

/** The reading of that name nearest to the instant, within `JUNCTION_AGE_MS` either way, °C. */
export function nearestInPack(pack: PackTemperatures, name: string, at: number): number | undefined {
  let nearest: IncomingReading | undefined;
  let distance = JUNCTION_AGE_MS;
  for (const reading of pack.get(name) ?? []) {
    const away = Math.abs(reading.at - at);
    if (away > distance || (nearest !== undefined && away === distance)) continue;
    nearest = reading;
    distance = away;
  }
  return nearest?.value;
}
