import { ScaleAnswer, ScaleQuestion } from '../../../contract/compute/scale.ts';
import { scaleGrown } from '../../../physics/time-at-temperature/scale.ts';
import { bandOf } from './answers.ts';
import { curveOf, measuredCautions } from './asked.ts';
import { computation } from './computation.ts';

export const scale = computation({
  name: 'scale',
  summary: 'Scale grown in air over a firing, and the metal it took',
  question: ScaleQuestion,
  answer: ScaleAnswer,
  run: (question) => {
    const grown = scaleGrown(curveOf(question));
    return {
      thicknessMetres: bandOf(grown.thicknessMetres, 1000, 'mm'),
      metalLossMetres: bandOf(grown.metalLossMetres, 1000, 'mm'),
      gainKilogramsPerSquareMetre: bandOf(grown.gainKgM2, 1, 'kg/m²'),
      secondsCounted: grown.secondsCounted,
      cautions: measuredCautions(question, grown.cautions),
      source:
        'iron in air: Paidassi (quoted by Chen and Yuen 2003) and Davies, Simnad and Birchenall 1951, both from memory; a factor of two either way for steel',
    };
  },
});
