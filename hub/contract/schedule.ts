import { z } from 'zod';
import { ScheduleBasis } from './schedule-basis.ts';

/**
 * A schedule: the plan of a firing as ordered segments. Stored in °C and seconds; people may type °F
 * (see `displayUnit`), converted at the edge.
 */

const Celsius = z.number().min(-50).max(1800).describe('Temperature, °C');
const Tolerance = z.number().gt(0).max(100).describe('Half width of the tolerance band, °C (a difference)');
const Rate = z.number().gt(0).max(50_000).describe('Rate, °C per hour (a positive size)');

export const RampSegment = z
  .strictObject({
    kind: z.literal('ramp'),
    targetCelsius: Celsius,
    toleranceCelsius: Tolerance.default(10),
    rateCelsiusPerHour: Rate.nullable().default(null).describe('null: as fast as possible'),
  })
  .meta({ id: 'RampSegment' });

export const SoakSegment = z
  .strictObject({
    kind: z.literal('soak'),
    targetCelsius: Celsius,
    toleranceCelsius: Tolerance.default(10),
    durationSeconds: z.int().gt(0).max(1_209_600).describe('Time inside tolerance that is wanted, seconds'),
  })
  .meta({ id: 'SoakSegment' });

export const COOLING_MEDIA = ['still-air', 'furnace', 'ash', 'vermiculite', 'quench'] as const;

export const CoolSegment = z
  .strictObject({
    kind: z.literal('cool'),
    targetCelsius: Celsius.describe('Where this cooling ends, °C'),
    medium: z.enum(COOLING_MEDIA),
    maximumRateCelsiusPerHour: Rate.nullable().default(null),
    minimumRateCelsiusPerHour: Rate.nullable().default(null),
  })
  .meta({ id: 'CoolSegment' });

export const Segment = z.discriminatedUnion('kind', [RampSegment, SoakSegment, CoolSegment]);
export type Segment = z.infer<typeof Segment>;
export type RampSegment = z.infer<typeof RampSegment>;
export type SoakSegment = z.infer<typeof SoakSegment>;
export type CoolSegment = z.infer<typeof CoolSegment>;

export const DisplayUnit = z.enum(['Cel', '[degF]']).describe('The unit people see, UCUM code');
export type DisplayUnit = z.infer<typeof DisplayUnit>;

/** Faults that no single field shows. Pushed with the path of the field to mend. */
function checkOrder(plan: { segments: readonly Segment[] }, ctx: z.RefinementCtx): void {
  plan.segments.forEach((segment, index) => {
    const path = ['segments', index];
    const before = plan.segments[index - 1];
    if (segment.kind === 'soak' && before && before.kind !== 'cool' && !overlaps(before, segment)) {
      ctx.addIssue({
        code: 'custom',
        path: [...path, 'targetCelsius'],
        message: `a soak at ${segment.targetCelsius} °C does not follow from the ${before.kind} to ${before.targetCelsius} °C before it: put a ramp or a cooling between them`,
      });
    }
    if (segment.kind !== 'cool') return;
    const { maximumRateCelsiusPerHour: most, minimumRateCelsiusPerHour: least } = segment;
    if (most !== null && least !== null && least > most) {
      ctx.addIssue({
        code: 'custom',
        path: [...path, 'minimumRateCelsiusPerHour'],
        message: `the slowest cooling allowed (${least} °C/h) is faster than the fastest allowed (${most} °C/h)`,
      });
    }
    if (before && before.targetCelsius <= segment.targetCelsius) {
      ctx.addIssue({
        code: 'custom',
        path: [...path, 'targetCelsius'],
        message: `cooling must end below the ${before.targetCelsius} °C it starts from`,
      });
    }
  });
}

function overlaps(before: Segment, soak: SoakSegment): boolean {
  return Math.abs(before.targetCelsius - soak.targetCelsius) <= soak.toleranceCelsius;
}

const planShape = {
  name: z.string().trim().min(1).max(80),
  note: z.string().max(2000).default(''),
  displayUnit: DisplayUnit.default('Cel'),
  segments: z.array(Segment).min(1).max(40),
  basis: ScheduleBasis.optional().describe('What it was made from; absent: written by hand'),
};

/** What a person sends to create or change a schedule. */
export const ScheduleDraft = z.strictObject(planShape).superRefine(checkOrder).meta({ id: 'ScheduleDraft' });
export type ScheduleDraft = z.infer<typeof ScheduleDraft>;
export type ScheduleDraftInput = z.input<typeof ScheduleDraft>;

/** A stored schedule. Each change makes a new version; a firing freezes the version it started under. */
export const Schedule = z
  .object({
    id: z.string(),
    version: z.int().min(1),
    ...planShape,
    createdAt: z.int(),
    archived: z.boolean(),
  })
  .meta({ id: 'Schedule' });
export type Schedule = z.infer<typeof Schedule>;
