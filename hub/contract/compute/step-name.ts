import { z } from 'zod';

/** What is done to a steel by heat, in the order of a route. */

export const STEPS = [
  'forge',
  'normalise',
  'full-anneal',
  'spheroidise',
  'sub-critical-anneal',
  'stress-relief',
  'austenitise',
  'temper',
] as const;
export const StepName = z.enum(STEPS);
export type StepName = z.infer<typeof StepName>;
