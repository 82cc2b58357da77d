import { GrainGrowthAnswer, GrainGrowthQuestion } from '../../../contract/compute/grain-growth.ts';
import { percentOf } from '../../../physics/steel/composition.ts';
import {
  astmGrainNumber,
  grainTrend,
  measuredGrain,
  measuredGrainSets,
} from '../../../physics/time-at-temperature/grain-growth.ts';
import { bandOf, orReason } from './answers.ts';
import { curveOf, steelAsked } from './asked.ts';
import { computation } from './computation.ts';

export const grainGrowth = computation({
  name: 'grain-growth',
  summary: 'Austenite grain size after a firing: a trend, beside the measured sets',
  question: GrainGrowthQuestion,
  answer: GrainGrowthAnswer,
  run: (question, world) => {
    const steel = world.steels.steelOf(question);
    const { composition } = steel;
    const [ni, cr, mo] = [
      percentOf(composition, 'Ni'),
      percentOf(composition, 'Cr'),
      percentOf(composition, 'Mo'),
    ];
    const { sizeMetres, ...seconds } = grainTrend(curveOf(question), {
      carbonPercent: composition.C,
      ni,
      cr,
      mo,
    });
    return {
      steel: steelAsked(steel),
      sizeMetres: sizeMetres === null ? null : bandOf(sizeMetres, 1e6, 'µm'),
      astmGrainNumber:
        sizeMetres === null
          ? null
          : orReason(() => astmGrainNumber(sizeMetres.value), ['out-of-range']).value,
      ...seconds,
      measured: measuredGrainSets().map((set) => ({ ...set, sizeMetres: measuredSize(set.id, question) })),
      source:
        'Lee and Lee, ISIJ Int. 48 (2008) 1755, in transcription; the band spans every measured set at hand',
    };
  },
});

/** What was measured at this hold; nothing for a curve or outside the measurements. */
function measuredSize(
  id: string,
  { celsius, hours }: { readonly celsius?: number | undefined; readonly hours?: number | undefined },
): number | null {
  if (celsius === undefined || hours === undefined) return null;
  return orReason(() => measuredGrain(id, celsius, hours * 3600), ['out-of-range']).value;
}
