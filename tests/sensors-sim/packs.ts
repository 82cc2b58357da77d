/** Reads the simulator's packs by hand, so that a test does not trust the code that wrote them. */
import { z } from 'zod';
import type { Emission } from '../../sensors-sim/run.ts';

const RecordsSchema = z.array(
  z.strictObject({
    bver: z.number().optional(),
    bt: z.number().optional(),
    t: z.number().optional(),
    n: z.string(),
    u: z.string(),
    v: z.number(),
  }),
);

export interface Resolved {
  readonly name: string;
  readonly unit: string;
  readonly atMs: number;
  readonly value: number;
}

/** Names, units, instants and values after RFC 8428 section 4.6 (base time plus time). */
export function resolve(payload: string): Resolved[] {
  let base = 0;
  return RecordsSchema.parse(JSON.parse(payload)).map((record) => {
    base = record.bt ?? base;
    const atMs = Math.round((base + (record.t ?? 0)) * 1000);
    return { name: record.n, unit: record.u, atMs, value: record.v };
  });
}

/** Every reading of one channel in the order in which it arrived, with its arrival. */
export function arrivals(emissions: readonly Emission[], node: string, channel: string) {
  return emissions
    .filter((each) => each.topic === `soakwatch/${node}/readings`)
    .flatMap((each) => resolve(each.payload).map((reading) => ({ ...reading, arrivedMs: each.atMs })))
    .filter((reading) => reading.name === channel);
}
