/** Parameters that many behaviours share. */
import { z } from 'zod';
import { NODE_NAMES } from '../node-names.ts';

export const timing = {
  startSeconds: z.number().min(0).default(0).describe('Seconds after the simulation (live: the start) began'),
  durationSeconds: z.number().gt(0).nullable().default(null).describe('null: until the end'),
};
export const furnace = z.enum(['forge', 'oven']).default('forge');
export const node = z.enum(NODE_NAMES);
export const share = z.number().min(0).max(1);
