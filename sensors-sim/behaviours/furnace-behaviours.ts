/** What people and furnaces do. */
import { z } from 'zod';
import { furnace, share, timing } from './fields.ts';

export const FURNACE_BEHAVIOURS = [
  z
    .strictObject({ name: z.literal('good-firing'), ...timing, furnace })
    .describe('A good watch, whatever the plan of the firing says'),
  z
    .strictObject({
      name: z.literal('overshoot'),
      ...timing,
      furnace,
      excessCelsius: z.number().gt(0).max(90).default(40).describe('Noticed only this far above the target'),
    })
    .describe('Full fire, or an oven relay that sticks, until somebody notices'),
  z
    .strictObject({
      name: z.literal('slow-operator'),
      ...timing,
      furnace,
      reactionSeconds: z.number().min(0).max(1800).default(60),
    })
    .describe('Sees what the instruments show and does something about it only after a while'),
  z
    .strictObject({
      name: z.literal('early-stop'),
      ...timing,
      furnace,
      soakShare: share.default(0.3).describe('Share of the planned soak that is waited for'),
    })
    .describe('Takes the steel out before its soak is over'),
  z
    .strictObject({ name: z.literal('goes-by-air'), ...timing, furnace })
    .describe('Counts the soak by the chamber thermocouple alone, whatever the steel is'),
  z
    .strictObject({
      name: z.literal('uneven-oven'),
      ...timing,
      factor: z.number().min(1).max(10).default(4).describe('Times as uneven as an ordinary oven'),
    })
    .describe('A worn door seal: the corner by the door is cold (needs oven-zones to be seen)'),
  z
    .strictObject({
      name: z.literal('loose-load-probe'),
      ...timing,
      furnace,
      airShare: share.default(0.6).describe('How much of what it shows is the chamber instead of the steel'),
    })
    .describe('The load thermocouple has slipped off the piece and shows the chamber as well'),
] as const;
