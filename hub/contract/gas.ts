import { z } from 'zod';
import { EpochMs } from './reading.ts';

/** Gas: what burns in a furnace, the cylinders, what a firing used, and what the page about it shows. */

/** Gases whose physics the hub knows. */
export const GASES = ['propane'] as const;

/** The burners of one furnace. Null on a furnace: nobody has said, and its gas is not judged. */
export const FurnaceGas = z
  .strictObject({
    gas: z.enum(GASES).default('propane'),
    boreMm: z.number().min(0.1).max(10).describe('Bore of each jet, mm'),
    dischargeCoefficient: z
      .number()
      .min(0.3)
      .max(1)
      .default(0.85)
      .describe('0.8 to 0.9 for drilled jets with a taper, 0.6 to 0.75 for sharp edges (common practice)'),
    burners: z.int().min(1).max(20).default(1).describe('Jets that are fed alike'),
    lowPascals: z
      .number()
      .min(0)
      .max(2_800_000)
      .nullable()
      .default(null)
      .describe('The burner runs steadily from here on, Pa gauge; null: not known'),
    highPascals: z
      .number()
      .gt(0)
      .max(2_800_000)
      .nullable()
      .default(null)
      .describe('And up to here, Pa gauge; null: not known'),
  })
  .refine(
    ({ lowPascals, highPascals }) => lowPascals === null || highPascals === null || lowPascals < highPascals,
    { path: ['highPascals'], message: 'the upper end of the band must be above the lower end' },
  )
  .meta({ id: 'FurnaceGas' });
export type FurnaceGas = z.infer<typeof FurnaceGas>;

export const furnaceGasShape = {
  gas: FurnaceGas.nullable()
    .default(null)
    .describe('Its burners; null: not set up, and its gas is not judged'),
};

/** Whether the machine knows the time zone of this IANA name. */
function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

/** Fields of the shop's settings about its gas. */
export const gasSettingsShape = {
  gasPricePerKilogram: z
    .number()
    .min(0)
    .max(1000)
    .nullable()
    .default(null)
    .describe('In the shop’s money; null: no costs are told'),
  currency: z.string().trim().max(8).default('').describe('What stands before an amount of money'),
  gasCylinderKilograms: z
    .number()
    .min(1)
    .max(60)
    .nullable()
    .default(null)
    .describe('What one cylinder holds full, kg'),
  gasCylinders: z.int().min(1).max(50).default(1).describe('Cylinders that feed together'),
  gasTareKilograms: z
    .number()
    .min(0)
    .max(1000)
    .nullable()
    .default(null)
    .describe(
      'Empty weight (TW) of all that stands on the scale, kg; 0: the scale shows the gas alone; null: not known',
    ),
  closingTime: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'hours and minutes, such as 18:30')
    .nullable()
    .default(null)
    .describe('When the shop closes; pressure that stands after it is told'),
  timeZone: z
    .string()
    .max(64)
    .refine(isTimeZone, 'an IANA time zone, such as Europe/Berlin')
    .nullable()
    .default(null)
    .describe('Where the clock of the shop hangs; null: the zone of the hub’s machine'),
};

/** How far back a change of cylinders may be noted: the judge goes back so far and not further. */
export const MOST_NOTED_LATE_MS = 4 * 3_600_000;

/** A cylinder put on, or a filling: so much gas is on the line from now on. */
export const GasChangeDraft = z
  .strictObject({
    kilograms: z.number().min(0).max(3000).describe('Gas on the line after it, all cylinders together, kg'),
    at: EpochMs.optional().describe('Default now; at most four hours back'),
    furnaceId: z
      .string()
      .max(64)
      .nullable()
      .default(null)
      .describe('The furnace with a supply of its own; null: the shop’s supply'),
    by: z.string().trim().min(1).max(80).default('wall'),
    note: z.string().trim().max(500).default(''),
  })
  .meta({ id: 'GasChangeDraft' });
export const GasChange = z
  .object({ id: z.string(), ...GasChangeDraft.shape, at: EpochMs })
  .meta({ id: 'GasChange' });
export type GasChange = z.infer<typeof GasChange>;

/** A figure with the range that it may honestly lie in. */
export const GasBand = z.object({ low: z.number(), value: z.number(), high: z.number() });
export type GasBand = Readonly<z.infer<typeof GasBand>>;

/** What a firing burned. */
export const GasUsed = z
  .object({
    method: z
      .enum(['scale', 'jet'])
      .describe('scale: weighed before and after; jet: added up from the pressure before the jet'),
    kilograms: GasBand,
    kilowattHoursNet: GasBand,
    kilowattHoursGross: GasBand,
    cost: GasBand.nullable().describe('null: no price is set'),
    currency: z.string(),
    kilogramsPerHour: z.number().nullable().describe('Mean while gas flowed; null: none was seen flowing'),
    unknownSeconds: z
      .number()
      .describe('Without a pressure reading; in the band as anything from none to the most'),
    sharedBy: z
      .enum(['mass', 'count'])
      .nullable()
      .describe(
        'How it is shared between the pieces: by mass where every mass is known, else alike; null: none',
      ),
    pieces: z.array(
      z.object({
        pieceId: z.string(),
        mark: z.string(),
        share: z.number(),
        kilograms: z.number(),
        cost: z.number().nullable(),
      }),
    ),
    text: z.string().describe('How the figure came about, in words'),
  })
  .meta({ id: 'GasUsed' });
export type GasUsed = z.infer<typeof GasUsed>;

const Endurance = z
  .object({
    lowHours: z.number(),
    valueHours: z.number(),
    highHours: z.number(),
    limitedBy: z.enum(['mass', 'vaporisation']),
    kilogramsPerHour: z.number().describe('The draw it is for'),
    drawFrom: z.enum(['now', 'last-firings', 'band']).describe('Where that draw comes from'),
  })
  .meta({ id: 'GasEndurance' });

export const GasSupplyNow = z
  .object({
    id: z.string().describe('A furnace’s id, or "shop"'),
    furnaceIds: z.array(z.string()),
    contents: GasBand.nullable().describe('Left, kg; null: no scale with its tare and no noted fill'),
    contentsFrom: z
      .enum(['scale', 'counted'])
      .nullable()
      .describe('counted: down from the last weighing or noted fill, by the jet'),
    notedAt: EpochMs.nullable().describe('When the fill was noted that it is counted from'),
    unknownSeconds: z.number().describe('Since the noted fill, without a pressure reading'),
    fullKilograms: z.number().nullable().describe('All cylinders of the supply full, kg'),
    endurance: Endurance.nullable(),
    cylinderPascals: z.number().nullable(),
    wallCelsius: z.number().nullable(),
  })
  .meta({ id: 'GasSupplyNow' });
export type GasSupplyNow = z.infer<typeof GasSupplyNow>;

export const GasFurnaceNow = z
  .object({
    furnaceId: z.string(),
    name: z.string(),
    supply: z.string(),
    gas: FurnaceGas,
    hasPressure: z.boolean().describe('A pressure channel is set up for it'),
    pressurePascals: z.number().nullable().describe('Gauge, before the jet; null: nothing fresh'),
    pressureAt: EpochMs.nullable(),
    regime: z.enum(['choked', 'subsonic', 'none']).nullable(),
    kilogramsPerHour: GasBand.nullable().describe('null: not known'),
    kilowattsNet: GasBand.nullable(),
    scaleKilogramsPerHour: z
      .number()
      .nullable()
      .describe('By the scale over the last minutes, for comparison'),
    wanted: z.boolean().nullable().describe('A firing wants heat now'),
    trouble: z.string().nullable().describe('Kind of the alarm that holds'),
  })
  .meta({ id: 'GasFurnaceNow' });
export type GasFurnaceNow = z.infer<typeof GasFurnaceNow>;

export const GasFiringRow = z
  .object({
    firingId: z.string(),
    title: z.string(),
    furnaceId: z.string(),
    startedAt: EpochMs,
    endedAt: EpochMs.nullable(),
    used: GasUsed.nullable().describe('null: nothing was measured of its gas'),
  })
  .meta({ id: 'GasFiringRow' });
export type GasFiringRow = z.infer<typeof GasFiringRow>;

/** What `GET /api/v1/gas` answers. */
export const GasView = z
  .object({
    now: EpochMs,
    judgedTo: EpochMs,
    furnaces: z.array(GasFurnaceNow),
    supplies: z.array(GasSupplyNow),
    firings: z.array(GasFiringRow).describe('The newest first, of furnaces whose gas is set up'),
    changes: z.array(GasChange).describe('The newest first'),
    notSetUp: z
      .array(z.object({ furnaceId: z.string(), name: z.string() }))
      .describe('Gas furnaces whose burners nobody has entered'),
    pricePerKilogram: z.number().nullable(),
    currency: z.string(),
    closingTime: z.string().nullable(),
    notices: z.array(z.string()).describe('What the numbers do not tell'),
    caution: z.string(),
  })
  .meta({ id: 'GasView' });
export type GasView = z.infer<typeof GasView>;
