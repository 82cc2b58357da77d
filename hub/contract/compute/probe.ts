import { z } from 'zod';
import { PROBE_CONSTRUCTIONS, PROBE_FAULTS } from '../probe.ts';
import { EpochMs } from '../reading.ts';
import { HeatReadings, MOST_CURVE_POINTS } from './curve.ts';
import { Provenance } from './estimate.ts';
import { ThermocoupleType, ToleranceClass } from './thermocouple.ts';

/** What is known of a probe: its uncertainty, how hot it may run, how long it ran above that, its faults. */

const PositiveOrZero = z.number().min(0);

export const ProbeUncertaintyQuestion = z
  .strictObject({
    type: ThermocoupleType,
    celsius: z.number().describe('Hot junction, °C'),
    coldJunctionCelsius: z.number().default(25),
    class: ToleranceClass.optional().describe('Leave out when a correction replaces it'),
    digitiserStep: z
      .union([z.strictObject({ millivolts: PositiveOrZero }), z.strictObject({ celsius: PositiveOrZero })])
      .optional()
      .describe('Smallest step of the emf, or of the temperature that it reports'),
    junctionHalfWidthCelsius: PositiveOrZero.optional().describe(
      'Error limit of the cold-junction sensor, ± °C',
    ),
    correctionStandardCelsius: PositiveOrZero.optional().describe(
      'Standard uncertainty of the correction, °C',
    ),
    others: z
      .array(z.strictObject({ name: z.string().min(1).max(80), standardCelsius: PositiveOrZero }))
      .max(20)
      .optional()
      .describe('Anything else, as standard uncertainties'),
  })
  .meta({
    id: 'ProbeUncertaintyQuestion',
    examples: [
      {
        type: 'K',
        celsius: 1000,
        class: 'iec-1',
        digitiserStep: { celsius: 0.25 },
        junctionHalfWidthCelsius: 2,
      },
    ],
  });
export type ProbeUncertaintyQuestion = z.infer<typeof ProbeUncertaintyQuestion>;

export const ProbeUncertaintyAnswer = z
  .object({
    standardCelsius: z.number(),
    expandedCelsius: z.number().describe('With the coverage factor: about 95 %'),
    coverageFactor: z.literal(2),
    budget: z.array(
      z.object({
        name: z.string(),
        distribution: z.enum(['rectangular', 'normal']),
        standard: z.number(),
        unit: z.enum(['°C', 'mV', 'µV']),
        sensitivity: z.number().describe('°C per unit'),
        contributionCelsius: z.number(),
      }),
    ),
    shown: z.string(),
    source: z.string(),
  })
  .meta({ id: 'ProbeUncertaintyAnswer' });

const ProbeSize = {
  type: ThermocoupleType,
  construction: z.enum(PROBE_CONSTRUCTIONS),
  millimetres: z.number().describe('Wire diameter, or sheath diameter of a mineral-insulated probe'),
};

export const ProbeLimitQuestion = z.strictObject(ProbeSize).meta({
  id: 'ProbeLimitQuestion',
  examples: [{ type: 'K', construction: 'mineral-insulated', millimetres: 3 }],
});

export const ProbeLimitAnswer = z
  .object({
    celsius: z.number().describe('A guide to life and stability, no safety limit'),
    listedMillimetres: z.number().describe('The listed size that it belongs to: the same or the next finer'),
    from: Provenance,
    shown: z.string(),
  })
  .meta({ id: 'ProbeLimitAnswer' });

export const ProbeTimeAboveQuestion = z
  .strictObject({
    curve: HeatReadings,
    limitCelsius: z.number(),
    maximumGapSeconds: z.number().gt(0).default(60).describe('Longer gaps count as unknown, never as below'),
  })
  .meta({
    id: 'ProbeTimeAboveQuestion',
    examples: [
      {
        curve: [
          { atMs: 0, celsius: 1000 },
          { atMs: 3600000, celsius: 1200 },
        ],
        limitCelsius: 1100,
        maximumGapSeconds: 3600,
      },
    ],
  });

export const ProbeTimeAboveAnswer = z
  .object({
    hoursAbove: z.number(),
    hoursUnknown: z.number(),
    peakCelsius: z.number().nullable(),
  })
  .meta({
    id: 'ProbeTimeAboveAnswer',
    examples: [{ hoursAbove: 0.5, hoursUnknown: 0, peakCelsius: 1200 }],
  });

export const ProbeFaultsQuestion = z
  .strictObject({
    type: ThermocoupleType,
    samples: z
      .array(
        z.strictObject({
          atMs: EpochMs,
          celsius: z.number().nullable().describe('null: the channel gave no number'),
          coldJunctionCelsius: z.number().optional(),
          heating: z.boolean().optional().describe('The furnace is known to be heating'),
          others: z
            .record(z.string().min(1).max(64), z.number())
            .optional()
            .describe('Newest values of the other probes in the same furnace, by name, °C'),
        }),
      )
      .min(1)
      .max(MOST_CURVE_POINTS),
  })
  .meta({
    id: 'ProbeFaultsQuestion',
    examples: [
      {
        type: 'K',
        samples: [
          { atMs: 0, celsius: 812 },
          { atMs: 1000, celsius: null },
          { atMs: 2000, celsius: 813 },
        ],
      },
    ],
  });

export const ProbeFault = z.enum(PROBE_FAULTS);

export const ProbeFaultsAnswer = z
  .object({
    faults: z
      .array(
        z.object({
          fault: ProbeFault,
          sinceMs: z.number().describe('When what was recognised began'),
          recognisedMs: z.number(),
          clearedMs: z.number().nullable().describe('null: it stands at the end'),
          evidence: z.record(z.string(), z.union([z.number(), z.string()])),
        }),
      )
      .describe('In order of time; one fault stands at a time, the most telling'),
  })
  .meta({ id: 'ProbeFaultsAnswer' });
export type ProbeFaultsAnswer = z.infer<typeof ProbeFaultsAnswer>;
