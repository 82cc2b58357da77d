import { z } from 'zod';
import { HeatReadings } from './curve.ts';
import { Band, Flag, Provenance } from './estimate.ts';
import { ExposureFrom, FurnaceId, HeatCurves, MEDIA, Points, pieceShape } from './piece.ts';

/** Cooling in a medium, in packing, and whether an anneal's rule was met. */

export const CoolingRule = z
  .strictObject({
    fromCelsius: z.number(),
    toCelsius: z.number(),
    mostCelsiusPerHour: z.number().describe('Fastest cooling allowed, °C/h'),
  })
  .meta({ id: 'CoolingRule' });
export type CoolingRule = z.infer<typeof CoolingRule>;

export const CoolingVerdict = z
  .object({
    met: z.boolean().describe('Every 10 °C within the rule, 5 % for the thermometer'),
    hours: z.number(),
    meanCelsiusPerHour: z.number(),
    worstCelsiusPerHour: z.number(),
    worstAtCelsius: z.number(),
    ruleHours: z.number().describe('How long the rule asks for at least'),
  })
  .meta({ id: 'CoolingVerdict' });
export type CoolingVerdict = z.infer<typeof CoolingVerdict>;

/** A number that may be missing, with the reason. */
const orReason = { reason: Flag.nullable().describe('Why a number is null') };

/** What is read off one falling curve. */
export const CoolingReadOff = z
  .object({
    t85Seconds: z.number().nullable().describe('From 800 to 500 °C; null when it does not pass both'),
    rateCelsiusPerHour: z.number().nullable().describe('At `rateAtCelsius`, over the 20 °C around it'),
    rule: CoolingVerdict.nullable().describe('null: no rule was asked, or the curve does not pass it'),
    ...orReason,
  })
  .meta({ id: 'CoolingReadOff' });
export type CoolingReadOff = z.infer<typeof CoolingReadOff>;

export const ReadOffShape = {
  rateAtCelsius: z.number().default(700).describe('Where to state the rate of cooling, °C'),
  rule: CoolingRule.optional().describe('An anneal’s rule to judge the core by'),
};

export const CoolingQuestion = z
  .strictObject({
    ...pieceShape,
    initialCelsius: z.number(),
    medium: z
      .enum([...MEDIA, 'closed-furnace'])
      .describe('closed-furnace: a small electric furnace left to cool; no claim below 450 °C'),
    mediumCelsius: z.number().optional().describe('Its usual temperature when left out: 20, oil 50'),
    furnace: FurnaceId.optional().describe('Only with closed-furnace: the furnace that is left to cool'),
    untilCelsius: z.number().optional().describe('The curves end when the core is below this'),
    points: Points,
    ...ReadOffShape,
  })
  .meta({
    id: 'CoolingQuestion',
    examples: [
      { shape: 'plate', thicknessMm: 12, initialCelsius: 950, medium: 'still-air' },
      { shape: 'bar', thicknessMm: 20, initialCelsius: 850, medium: 'still-oil' },
    ],
  });
export type CoolingQuestion = z.infer<typeof CoolingQuestion>;

export const CoolingCurve = z
  .object({ curves: HeatCurves, core: CoolingReadOff })
  .meta({ id: 'CoolingCurve' });

export const CoolingAnswer = z
  .object({
    typical: CoolingCurve,
    slowest: CoolingCurve.nullable().describe('With the lowest film coefficient that the medium may have'),
    fastest: CoolingCurve.nullable().describe('With the highest; null where no band is known'),
    t85Seconds: Band.nullable().describe('low: fastest, high: slowest'),
    mediumCelsius: z.number().nullable().describe('null: it changes'),
    exposureFrom: ExposureFrom.nullable().describe('Of a closed furnace; null: see `from`'),
    from: Provenance,
  })
  .meta({ id: 'CoolingAnswer' });
export type CoolingAnswer = z.infer<typeof CoolingAnswer>;

export const CoolingRuleQuestion = z.strictObject({ curve: HeatReadings, ...ReadOffShape }).meta({
  id: 'CoolingRuleQuestion',
  examples: [
    {
      curve: [
        { atMs: 0, celsius: 830 },
        { atMs: 23400000, celsius: 648 },
        { atMs: 36000000, celsius: 480 },
      ],
      rule: { fromCelsius: 820, toCelsius: 650, mostCelsiusPerHour: 30 },
    },
  ],
});

export const BuriedBarQuestion = z
  .strictObject({
    widthMm: z.number().describe('Cross-section of the bar, 0.5 to 300 mm'),
    thicknessMm: z.number(),
    packing: z.enum(['ash', 'vermiculite']),
    canRadiusMm: z.number().default(150).describe('Packing around the bar, 30 to 1000 mm'),
    initialCelsius: z.number(),
    shopCelsius: z.number().default(20),
    untilCelsius: z.number().default(100).describe('The curve ends below this, or after 48 h'),
    hotCompanionKilogramsPerMetre: z
      .number()
      .default(0)
      .describe('Hot steel packed beside the bar, kg per metre of bar'),
    material: pieceShape.material,
    points: Points,
    ...ReadOffShape,
  })
  .meta({
    id: 'BuriedBarQuestion',
    examples: [
      {
        widthMm: 40,
        thicknessMm: 6,
        packing: 'ash',
        canRadiusMm: 125,
        initialCelsius: 850,
        rule: { fromCelsius: 830, toCelsius: 650, mostCelsiusPerHour: 28 },
      },
    ],
  });

export const BuriedBarAnswer = z
  .object({
    curve: z.object({ seconds: z.array(z.number()), celsius: z.array(z.number()) }),
    bar: CoolingReadOff,
    from: Provenance,
  })
  .meta({ id: 'BuriedBarAnswer' });
