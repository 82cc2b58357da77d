import { z } from 'zod';
import { AirNotices, GasSample, MOST_GAS_SAMPLES } from './gas-curve.ts';

/** Air changes an hour from the way a gas falls. */

export const DECAY_CONDITIONS = [
  'source-off',
  'openings-unchanged',
  'background-steady',
  'above-background',
  'enough-samples',
  'enough-fall',
  'one-slope',
  'mixed',
] as const;

const Fall = z.array(GasSample).min(1).max(MOST_GAS_SAMPLES);

export const DecayQuestion = z
  .strictObject({
    backgroundPpm: z.number().describe('Level of the incoming air, 0 or more'),
    backgroundAfterPpm: z.number().optional().describe('The same measured again at the end'),
    samples: Fall.describe('In order of time; three or more well above the background'),
    otherPoints: z.array(Fall).max(10).optional().describe('The same fall at other points of the room'),
    sourceOff: z.boolean().optional().describe('Nothing gives off the gas, people included for CO2'),
    openingsUnchanged: z.boolean().optional().describe('Doors, windows and fans stayed as they were'),
    resolutionPpm: z.number().optional().describe('Step of the sensor; 1 where left out'),
    confidence: z.number().default(0.95).describe('Share of the interval, 0.5 to 0.999'),
    room: z
      .strictObject({
        volumeCubicMetres: z.number(),
        limitPpm: z.number(),
        mixingFactor: z.number().optional().describe('1 perfect to 10; 3 where left out'),
      })
      .optional(),
  })
  .meta({
    id: 'DecayQuestion',
    description:
      'Never raise carbon monoxide for a test: take the tail after normal work with the people out, or CO2',
    examples: [
      {
        backgroundPpm: 5,
        samples: [180, 152, 131, 111, 95, 82, 70].map((ppm, i) => ({ at: i * 300_000, ppm })),
      },
      {
        backgroundPpm: 5,
        backgroundAfterPpm: 5,
        samples: [180, 152, 131, 111, 95, 82, 70].map((ppm, i) => ({ at: i * 300_000, ppm })),
        sourceOff: true,
        openingsUnchanged: true,
        room: { volumeCubicMetres: 100, limitPpm: 20 },
      },
    ],
  });

export const DecayCondition = z
  .object({
    code: z.enum(DECAY_CONDITIONS),
    held: z.boolean().nullable().describe('null: not told and not measured'),
    found: z.number().nullable(),
    wanted: z.number().nullable(),
    reason: z.string(),
  })
  .meta({ id: 'DecayCondition', description: 'A condition after ASTM E741' });

const FromDecay = z
  .object({
    low: z.number(),
    value: z.number(),
    high: z.number().nullable().describe('null where the slow end of the interval is no air change'),
  })
  .meta({ id: 'FromDecay' });

export const DecayAnswer = z
  .object({
    airChangesPerHour: z.number().describe('Below 0 where the gas did not fall; see the conditions'),
    standardError: z.number(),
    low: z.number(),
    high: z.number(),
    confidence: z.number(),
    count: z.int().describe('Samples used'),
    leftOut: z.int().describe('Samples after the fall had reached the background'),
    seconds: z.number(),
    conditions: z.array(DecayCondition),
    conditionsHeld: z.boolean().nullable().describe('null: none broken, but not all known'),
    airCubicMetresPerHour: FromDecay.nullable(),
    secondsUntilBelow: FromDecay.nullable().describe('A time to wait, then read the sensor'),
    highestSourceCubicMetresPerHour: FromDecay.nullable().describe('Of pure gas; plan with low'),
    notices: AirNotices,
  })
  .meta({ id: 'DecayAnswer' });
