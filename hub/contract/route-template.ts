import { z } from 'zod';
import { STEPS, type StepName } from './compute/steels.ts';
import { EpochMs } from './reading.ts';
import { ReminderCode } from './reminder.ts';
import { Id } from './shop.ts';

/** A route: the heats, works and checks that a piece must pass, in order; and templates of routes. */

/** The steps of the catalogue, and `harden`: austenitise and quench in one. */
export const ROUTE_HEATS = [...STEPS, 'harden'] as const;
export const RouteHeat = z.enum(ROUTE_HEATS);
export type RouteHeat = z.infer<typeof RouteHeat>;

export const ROUTE_WORKS = ['shape', 'grind', 'stamp', 'straighten', 'clean', 'finish', 'other'] as const;
export const RouteWork = z.enum(ROUTE_WORKS);
export type RouteWork = z.infer<typeof RouteWork>;

export const ROUTE_CHECKS = ['hardness', 'straightness', 'file', 'magnet', 'crack', 'other'] as const;
export const RouteCheck = z.enum(ROUTE_CHECKS);
export type RouteCheck = z.infer<typeof RouteCheck>;

/** What a heat of a route asks of the steel: the step whose temperature window counts. */
export function windowStepOf(heat: RouteHeat): StepName {
  return heat === 'harden' ? 'austenitise' : heat;
}

const common = {
  title: z
    .string()
    .trim()
    .max(80)
    .default('')
    .describe('In the words of the shop; empty: the name of the step'),
  note: z.string().max(2000).default(''),
  optional: z.boolean().default(false).describe('May be skipped: a second or third normalising'),
  reminders: z.array(ReminderCode).max(12).default([]),
};

/** What each kind of step says of itself; spread with what a template or a piece adds. */
export const heatShape = {
  kind: z.literal('heat'),
  step: RouteHeat,
  scheduleId: Id.nullable().default(null).describe('The schedule to fire it by; null: not chosen yet'),
  ...common,
};
export const workShape = { kind: z.literal('work'), work: RouteWork, ...common };
export const checkShape = { kind: z.literal('check'), check: RouteCheck, ...common };

export const TemplateStep = z
  .discriminatedUnion('kind', [
    z.strictObject(heatShape),
    z.strictObject(workShape),
    z.strictObject(checkShape),
  ])
  .meta({ id: 'TemplateStep' });
export type TemplateStep = z.infer<typeof TemplateStep>;

export const MOST_ROUTE_STEPS = 60;

export const RouteTemplateDraft = z
  .strictObject({
    name: z.string().trim().min(1).max(80),
    note: z.string().max(2000).default(''),
    steps: z.array(TemplateStep).min(1).max(MOST_ROUTE_STEPS),
  })
  .meta({ id: 'RouteTemplateDraft' });
export type RouteTemplateDraft = z.infer<typeof RouteTemplateDraft>;

/** A template belongs to the user: a change to it changes no piece that has taken its route from it. */
export const RouteTemplate = z
  .object({ id: Id, ...RouteTemplateDraft.shape, createdAt: EpochMs, updatedAt: EpochMs })
  .meta({ id: 'RouteTemplate' });
export type RouteTemplate = z.infer<typeof RouteTemplate>;
