import { z } from 'zod';
import { THERMOCOUPLE_TYPES, TOLERANCE_CLASSES } from '../probe.ts';
import { Provenance } from './estimate.ts';

/** ITS-90 thermocouples: emf from temperature and back. */

export const ThermocoupleType = z.enum(THERMOCOUPLE_TYPES).meta({ id: 'ThermocoupleType' });
export type ThermocoupleType = z.infer<typeof ThermocoupleType>;

export const ToleranceClass = z
  .enum(TOLERANCE_CLASSES)
  .meta({ id: 'ToleranceClass', description: 'IEC 60584-1 class 1 to 3, ASTM E230 limits of error' });
export type ToleranceClass = z.infer<typeof ToleranceClass>;

const shape = {
  type: ThermocoupleType,
  celsius: z.number().optional().describe('Hot junction, °C: answers with its emf'),
  millivolts: z.number().optional().describe('Emf at the terminals, mV: answers with the temperature'),
  coldJunctionCelsius: z.number().default(0).describe('Temperature of the terminals, °C'),
  class: ToleranceClass.default('iec-2').describe('Tolerance class to state a band for'),
};

export const ThermocoupleQuestion = z
  .strictObject(shape)
  .superRefine(({ celsius, millivolts }, ctx) => {
    if ((celsius === undefined) !== (millivolts === undefined)) return;
    ctx.addIssue({ code: 'custom', path: ['celsius'], message: 'give either celsius or millivolts' });
  })
  .meta({
    id: 'ThermocoupleQuestion',
    examples: [
      { type: 'K', celsius: 1000 },
      { type: 'K', millivolts: 40.2, coldJunctionCelsius: 25 },
    ],
  });
export type ThermocoupleQuestion = z.infer<typeof ThermocoupleQuestion>;

export const ToleranceBand = z
  .object({
    class: ToleranceClass,
    halfWidthCelsius: z.number(),
    lowCelsius: z.number(),
    highCelsius: z.number(),
    from: Provenance,
  })
  .meta({ id: 'ToleranceBand', description: 'Of new wire as delivered: it says nothing about drift' });

export const ThermocoupleAnswer = z
  .object({
    type: ThermocoupleType,
    celsius: z.number().describe('Hot junction, °C'),
    millivolts: z.number().describe('Emf at the terminals, mV, with them at coldJunctionCelsius'),
    coldJunctionCelsius: z.number(),
    sensitivityMicrovoltsPerCelsius: z.number().describe('dE/dt at the hot junction'),
    tolerance: ToleranceBand.nullable().describe('null: the class does not exist or does not reach here'),
    tolerances: z.array(ToleranceBand).describe('Every class that reaches this temperature'),
    range: z
      .object({ lowCelsius: z.number(), highCelsius: z.number() })
      .describe('Of the reference function'),
    shown: z.object({ celsius: z.string(), millivolts: z.string() }),
    source: z.string(),
  })
  .meta({ id: 'ThermocoupleAnswer' });
export type ThermocoupleAnswer = z.infer<typeof ThermocoupleAnswer>;

export const StraightLineQuestion = z
  .strictObject({
    type: ThermocoupleType,
    reportedCelsius: z.number().describe('What the digitiser reports for the probe, °C'),
    coldJunctionCelsius: z.number().describe('Temperature of its terminals, °C'),
    slopeMillivoltsPerCelsius: z
      .number()
      .optional()
      .describe('The slope it assumes; the one of its type when left out (there is none for B)'),
  })
  .meta({
    id: 'StraightLineQuestion',
    examples: [{ type: 'K', reportedCelsius: 1000, coldJunctionCelsius: 25 }],
  });

export const StraightLineAnswer = z
  .object({
    celsius: z.number().describe('Hot junction by ITS-90, °C'),
    errorCelsius: z.number().describe('Reported less true, K'),
    slopeMillivoltsPerCelsius: z.number(),
    shown: z.string(),
  })
  .meta({ id: 'StraightLineAnswer' });
