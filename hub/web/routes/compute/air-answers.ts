import type { z } from 'zod';
import type { Flag } from '../../../contract/compute/estimate.ts';
import type { AirLimit, exposureShape, LimitReading } from '../../../contract/compute/exposure.ts';
import type { AirNoticeCode } from '../../../contract/words/types.ts';
import { words } from '../../../contract/words/words.ts';
import type { ExposureReading } from '../../../physics/carbon-monoxide/exposure-reading.ts';
import type { PpmLimit } from '../../../physics/carbon-monoxide/limits.ts';
import type { Frozen } from './computation.ts';

/** Exposure as the physics reads it off, in the words of the contract. */

type Exposure = Frozen<z.infer<z.ZodObject<typeof exposureShape>>>;

export function exposureAnswer(reading: ExposureReading): Exposure {
  const { twa, lastEightHours, stel, coverage } = reading;
  return {
    twa,
    lastEightHours,
    stel,
    highestStel: atLevel(reading.highestStel),
    highestEightHours: atLevel(reading.highestEightHours),
    peak: atLevel(reading.peak),
    coverage,
    limits: reading.limits.map((each): Frozen<LimitReading> => ({ ...each, limit: limitAnswer(each.limit) })),
  };
}

export function limitAnswer(limit: PpmLimit): Frozen<AirLimit> {
  const { use: _, ...rest } = limit;
  return rest;
}

/** Instants between samples fall between milliseconds too. */
export function atLevel(level: { readonly ppm: number; readonly atMs: number } | null) {
  return level === null ? null : { at: Math.round(level.atMs), ppm: level.ppm };
}

export function noticesOf(codes: readonly AirNoticeCode[]): Frozen<Flag>[] {
  return codes.map((code) => ({ code, message: words('en').airNotice(code) }));
}
