import { z } from 'zod';
import { EpochMs } from '../reading.ts';

/** Decalescence and recalescence in the record of a thermocouple that touches the piece. */

/** A body may hold 256 kB, and about 62 bytes go to a point with its chamber. */
export const MOST_RECORD_POINTS = 4000;

/** A made-up record: a piece in a steady furnace of 850 °C lingers at 735 °C, a reading every 10 s. */
function exampleRecord(): { atMs: number; celsius: number; chamberCelsius: number }[] {
  const record: { atMs: number; celsius: number; chamberCelsius: number }[] = [];
  let celsius = 620;
  for (let i = 0; celsius < 830; i += 1) {
    record.push({ atMs: i * 10_000, celsius: Math.round(celsius * 10) / 10, chamberCelsius: 850 });
    const lingering = celsius > 729 && celsius < 742 ? 0.1 : 1;
    celsius += (lingering * (850 - celsius)) / 40;
  }
  return record;
}

export const ArrestsQuestion = z
  .strictObject({
    record: z
      .array(
        z.strictObject({
          atMs: EpochMs,
          celsius: z.number(),
          chamberCelsius: z.number().optional().describe('Lets the swings of the chamber be taken out'),
        }),
      )
      .min(2)
      .max(MOST_RECORD_POINTS),
    disturbances: z
      .array(z.strictObject({ atMs: EpochMs, kind: z.enum(['door', 'set-point']) }))
      .max(200)
      .default([])
      .describe('Arrests within 60 s of one are rejected'),
  })
  .meta({ id: 'ArrestsQuestion', examples: [{ record: exampleRecord() }] });

export const Arrest = z
  .object({
    kind: z.enum(['decalescence', 'recalescence']),
    direction: z.enum(['heating', 'cooling']),
    celsius: z.number().describe('Where the piece lingered longest: Ac1 or Ar1 of this piece at this rate'),
    lowCelsius: z.number(),
    highCelsius: z.number(),
    fromMs: z.number(),
    toMs: z.number(),
    heatJoulesPerGram: z.number(),
    chamberKnown: z.boolean().describe('False: the heat may be down to half of the truth under a ramp'),
    reheatedCelsius: z.number().describe('How far it re-heated by itself, K'),
    confirmedByDerivative: z.boolean(),
    confidence: z.number().describe('0 to 1, our weighing'),
    shown: z.string(),
  })
  .meta({ id: 'Arrest' });

export const ArrestsAnswer = z
  .object({
    arrests: z.array(Arrest).describe('One a leg at most'),
    rejected: z.array(z.object({ ...Arrest.shape, reason: z.enum(['door', 'set-point']) })),
  })
  .meta({ id: 'ArrestsAnswer' });
