import { z } from 'zod';
import { Provenance } from './estimate.ts';

/** Rockwell C and Vickers, ASTM E140 table 1, inside the table only. */

export const HardnessScale = z.enum(['HRC', 'HV']);
export type HardnessScale = z.infer<typeof HardnessScale>;

export const HardnessConversionQuestion = z
  .strictObject({
    value: z.number(),
    from: HardnessScale,
    to: HardnessScale.optional().describe('The other scale when left out'),
  })
  .superRefine(({ from, to }, ctx) => {
    if (to !== from) return;
    ctx.addIssue({ code: 'custom', path: ['to'], message: `is the same scale as from, ${from}` });
  })
  .meta({
    id: 'HardnessConversionQuestion',
    examples: [
      { value: 60, from: 'HRC', to: 'HV' },
      { value: 513, from: 'HV', to: 'HRC' },
    ],
  });

export const HardnessConversionAnswer = z
  .object({
    value: z.number().describe('On the scale `to`'),
    from: HardnessScale,
    to: HardnessScale,
    given: z.number(),
    provenance: Provenance,
    shown: z.string(),
  })
  .meta({
    id: 'HardnessConversionAnswer',
    examples: [
      {
        value: 697,
        from: 'HRC',
        to: 'HV',
        given: 60,
        provenance: { standing: 'published-secondary', source: 'ASTM E140 table 1, three copies' },
        shown: '697 HV',
      },
    ],
  });
