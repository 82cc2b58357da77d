import { z } from 'zod';

/** Propane through a jet, over its liquid, and how long it lasts. */

const Gas = z.string().default('propane').describe('Only propane is known');

export const OrificeFlowQuestion = z
  .strictObject({
    gas: Gas,
    boreMm: z.number().describe('0.1 to 10 mm'),
    gaugePressurePa: z.number().describe('At the jet; a gauge before a long hose reads too much'),
    dischargeCoefficient: z
      .number()
      .default(0.85)
      .describe('0.8 to 0.9 for drilled jets with a taper, 0.6 to 0.75 for sharp edges'),
    gasCelsius: z.number().default(15),
    atmospherePa: z.number().optional().describe('One standard atmosphere where left out'),
  })
  .meta({
    id: 'OrificeFlowQuestion',
    examples: [
      {
        gas: 'propane',
        boreMm: 0.889,
        gaugePressurePa: 68_947.57,
        dischargeCoefficient: 0.85,
        gasCelsius: 15,
      },
    ],
  });

export const OrificeFlowAnswer = z
  .object({
    kilogramsPerHour: z.number(),
    lowKilogramsPerHour: z.number().describe('15 % less: bore, coefficient, gauge, hose, temperature'),
    highKilogramsPerHour: z.number(),
    kilowattsNet: z.number(),
    kilowattsGross: z.number(),
    regime: z.enum(['choked', 'subsonic', 'none']),
    pressureRatio: z.number().describe('Absolute, behind over before the jet'),
    chokedRatio: z.number().describe('At and below it the flow is choked'),
  })
  .meta({ id: 'OrificeFlowAnswer' });

export const VapourPressureQuestion = z
  .strictObject({
    gas: Gas,
    celsius: z.number().optional().describe('-100 to 96 °C'),
    absolutePa: z.number().optional().describe('Instead of a temperature: what temperature boils at it'),
  })
  .superRefine(({ celsius, absolutePa }, ctx) => {
    if ((celsius === undefined) !== (absolutePa === undefined)) return;
    ctx.addIssue({ code: 'custom', path: ['celsius'], message: 'give either celsius or absolutePa' });
  })
  .meta({
    id: 'VapourPressureQuestion',
    examples: [
      { gas: 'propane', celsius: 20 },
      { gas: 'propane', absolutePa: 101_325 },
    ],
  });

export const VapourPressureAnswer = z
  .object({
    celsius: z.number(),
    absolutePa: z.number(),
    gaugePa: z.number().describe('Over one standard atmosphere; below 0 nothing comes out'),
    commercialHighGaugePa: z.number().describe('What gas as sold may show, since it holds lighter gases'),
    latentHeatJoulesPerKilogram: z.number(),
  })
  .meta({
    id: 'VapourPressureAnswer',
    description: 'The pressure of a cylinder shows the temperature of its liquid, not how much is left',
  });

export const MassBand = z
  .strictObject({ low: z.number(), value: z.number(), high: z.number() })
  .meta({ id: 'MassBand', description: 'kg, 0 ≤ low ≤ value ≤ high' });

export const GasDraw = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('mass'), kilogramsPerHour: z.number() }),
    z.strictObject({ kind: z.literal('net'), kilowatts: z.number() }),
    z.strictObject({ kind: z.literal('gross'), kilowatts: z.number() }),
  ])
  .meta({ id: 'GasDraw' });

export const EnduranceQuestion = z
  .strictObject({
    gas: Gas,
    contents: z
      .union([z.number(), MassBand])
      .describe('Left in one cylinder, kg; a plain number is taken as exact'),
    draw: GasDraw,
    drawErrorShare: z.number().default(0.15).describe('0 to 0.9'),
    fullKilograms: z.number().optional().describe('What one cylinder holds; for what boiling keeps up with'),
    airCelsius: z.number().optional().describe('Of the air around the cylinder'),
    cylinders: z.int().default(1).describe('That feed together and are equally full'),
    firingHours: z.number().min(0).optional().describe('A firing that it should last for'),
  })
  .meta({
    id: 'EnduranceQuestion',
    examples: [
      { contents: 9.07, draw: { kind: 'net', kilowatts: 15 }, airCelsius: 20 },
      {
        contents: { low: 4, value: 5, high: 6 },
        draw: { kind: 'mass', kilogramsPerHour: 1.1 },
        fullKilograms: 9.07,
        airCelsius: 5,
        firingHours: 4,
      },
    ],
  });

export const EnduranceAnswer = z
  .object({
    lowHours: z.number(),
    hours: z.number(),
    highHours: z.number(),
    limitedBy: z.enum(['mass', 'vaporisation']).describe('What ends it first at the low end'),
    kilogramsPerHour: z.number(),
    vaporisationHours: z.number().nullable().describe('Until boiling no longer keeps up; null: not known'),
    continuousKilogramsPerHour: z.number().nullable().describe('Most that one cylinder gives for hours'),
    lasts: z
      .enum(['will-not-last', 'may-not-last', 'expected-to-last'])
      .nullable()
      .describe('For firingHours; an expectation, no promise'),
  })
  .meta({ id: 'EnduranceAnswer' });
