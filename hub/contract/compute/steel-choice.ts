import { z } from 'zod';
import { Flag } from './estimate.ts';

/** How a question names its steel: a grade of the catalogue, a composition, or both. */

export const ELEMENTS = [
  'C',
  'Mn',
  'Si',
  'Cr',
  'Ni',
  'Mo',
  'V',
  'W',
  'Cu',
  'Co',
  'Al',
  'Ti',
  'Nb',
  'Zr',
  'P',
  'S',
  'N',
  'As',
  'B',
] as const;
export type Element = (typeof ELEMENTS)[number];

const Percent = z.number().describe('Mass percent');

const percents = {
  C: Percent,
  ...(Object.fromEntries(ELEMENTS.slice(1).map((element) => [element, Percent.optional()])) as Record<
    Exclude<Element, 'C'>,
    z.ZodOptional<typeof Percent>
  >),
};

/** "mn: did you mean Mn?" for the commonest slip; the list of symbols otherwise. */
function unknownElement(keys: readonly string[]): string {
  return keys
    .map((key) => {
      const likely = ELEMENTS.find((element) => element.toLowerCase() === key.toLowerCase());
      return `unknown element ${key}: ${likely ? `did you mean ${likely}?` : `known are ${ELEMENTS.join(', ')}`}`;
    })
    .join('; ');
}

export const Composition = z
  .strictObject(percents, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? unknownElement(issue.keys) : undefined),
  })
  .meta({
    id: 'Composition',
    description: 'Mass percent by element; carbon is always named, what is absent counts as zero',
    examples: [{ C: 0.45, Mn: 0.75, Si: 0.25 }],
  });
export type Composition = z.infer<typeof Composition>;

/** Fields of every question about a steel; finish with `.superRefine(namesASteel)`. */
export const steelShape = {
  steel: z
    .string()
    .trim()
    .min(1)
    .max(64)
    .optional()
    .describe('A steel of GET /api/v1/steels, the shop’s own included, by any of its names or its id'),
  composition: Composition.optional().describe(
    'What the steel is made of. Together with `steel`: the certificate of a piece sold as that grade',
  ),
  certificate: z
    .string()
    .min(1)
    .max(64)
    .optional()
    .describe('Id of a mill certificate that is kept: its steel, with its composition'),
};

interface SteelNamed {
  readonly steel?: string | undefined;
  readonly composition?: Composition | undefined;
  readonly certificate?: string | undefined;
}

export function namesASteel({ steel, composition, certificate }: SteelNamed, ctx: z.RefinementCtx): void {
  if (certificate !== undefined && (steel !== undefined || composition !== undefined)) {
    const message = 'a certificate brings its steel and its composition: leave those out';
    ctx.addIssue({ code: 'custom', path: ['certificate'], message });
    return;
  }
  if (steel !== undefined || composition !== undefined || certificate !== undefined) return;
  const message = 'name a steel (a grade of /api/v1/steels) or give its composition in mass percent';
  ctx.addIssue({ code: 'custom', path: ['steel'], message });
}

/** The steel that an answer is about, repeated so that the answer stands alone. */
export const SteelAsked = z
  .object({
    id: z
      .string()
      .nullable()
      .describe('Id in the catalogue or of the own steel; null: only a composition was given'),
    title: z.string(),
    composition: z.record(z.string(), z.number()).describe('Mass percent, as computed with'),
    flags: z.array(Flag),
  })
  .meta({ id: 'SteelAsked' });
export type SteelAsked = z.infer<typeof SteelAsked>;
