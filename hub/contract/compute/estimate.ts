import { z } from 'zod';

/** What every computed number carries: its band, the formula that gave it, and how that formula is known. */

export const Standing = z
  .enum([
    'published',
    'published-primary',
    'published-secondary',
    'from-memory',
    'common-practice',
    'derived-here',
  ])
  .meta({
    id: 'Standing',
    description:
      'How a number came to us. published-primary: seen in the paper or standard itself; published-secondary: in a copy that names it; published: in a text, nearer not recorded; from-memory: recalled, not seen; common-practice: trade habit, no source; derived-here: worked out in this project from the sources named',
  });
export type Standing = z.infer<typeof Standing>;

export const Provenance = z
  .object({
    standing: Standing,
    source: z.string(),
    note: z.string().optional().describe('What to know before trusting it'),
  })
  .meta({ id: 'Provenance' });
export type Provenance = z.infer<typeof Provenance>;

export const Flag = z
  .object({ code: z.string().describe('Stable, kebab-case'), message: z.string() })
  .meta({ id: 'Flag', description: 'A remark on an answer' });
export type Flag = z.infer<typeof Flag>;

export const EstimateUnit = z.enum(['celsius', 'HRC', 'HV', 'mm', 'fraction']);
export type EstimateUnit = z.infer<typeof EstimateUnit>;

export const Estimate = z
  .object({
    value: z.number().describe('Full precision, for programs'),
    low: z.number(),
    high: z.number(),
    unit: EstimateUnit,
    formula: z.string(),
    standing: Standing,
    source: z.string(),
    flags: z.array(Flag),
    shown: z.string().describe('With the figures that the band allows, for people, in °C'),
  })
  .meta({ id: 'Estimate', description: 'A number with its band: low ≤ value ≤ high' });
export type Estimate = z.infer<typeof Estimate>;

export const NoEstimate = z
  .object({
    value: z.null(),
    low: z.null(),
    high: z.null(),
    unit: EstimateUnit,
    formula: z.null(),
    standing: z.null(),
    source: z.null(),
    reason: Flag.describe('Why there is no number'),
    flags: z.array(Flag),
    shown: z.null(),
  })
  .meta({ id: 'NoEstimate', description: 'The honest alternative to a number' });
export type NoEstimate = z.infer<typeof NoEstimate>;

/** Narrow with `answer.value !== null`. */
export const Answer = z.union([Estimate, NoEstimate]);
export type Answer = z.infer<typeof Answer>;

export const Band = z
  .object({ low: z.number(), value: z.number(), high: z.number(), shown: z.string() })
  .meta({ id: 'Band', description: 'A number with its range, in the unit that its field names' });
export type Band = z.infer<typeof Band>;
