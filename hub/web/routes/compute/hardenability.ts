import {
  HardenabilityAnswer,
  HardenabilityQuestion,
  QUENCHES,
} from '../../../contract/compute/hardenability.ts';
import { hardenabilityFactors, idealDiameter } from '../../../physics/steel/ideal-diameter.ts';
import { hardensThrough, QUENCH_SEVERITY_PER_INCH } from '../../../physics/steel/through-hardening.ts';
import { answerOf } from './answers.ts';
import { steelAsked } from './asked.ts';
import { computation } from './computation.ts';

export const hardenability = computation({
  name: 'hardenability',
  summary: 'Ideal diameter, and whether a section hardens through in a medium',
  question: HardenabilityQuestion,
  answer: HardenabilityAnswer,
  run: ({ shape, thicknessMm, medium: asked, ...question }, world) => {
    const steel = world.steels.steelOf(question);
    const { composition } = steel;
    const section = {
      composition,
      shape: shape === 'plate' ? shape : 'bar',
      sectionMm: thicknessMm,
    } as const;
    return {
      steel: steelAsked(steel),
      idealDiameterMm: answerOf(idealDiameter(composition)),
      factors: { ...hardenabilityFactors(composition) },
      media: (asked === undefined ? QUENCHES : [asked]).map((medium) => {
        const verdict = hardensThrough({ ...section, medium });
        const [low, high] = QUENCH_SEVERITY_PER_INCH[medium];
        return {
          medium,
          severityPerInch: { low, high },
          criticalMm: answerOf(verdict.critical),
          hardensThrough: verdict.hardensThrough,
        };
      }),
    };
  },
});
