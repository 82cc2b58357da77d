import type { z } from 'zod';
import { type Soak, SoakTimeAnswer, SoakTimeQuestion } from '../../../contract/compute/soak-time.ts';
import { duration } from '../../../contract/words/format.ts';
import type { Material } from '../../../physics/heat/material.ts';
import { startPiece } from '../../../physics/heat/piece.ts';
import { soakNeeded } from '../../../physics/heat/soak-time.ts';
import { orReason } from './answers.ts';
import { workMeter } from './bounds.ts';
import { computation } from './computation.ts';
import { exposureOf, type MetExposure } from './exposure.ts';
import { bodyOf, intervalsFor, materialSource, surroundingsOf } from './pieces.ts';

type Question = z.output<typeof SoakTimeQuestion>;

export const soakTime = computation({
  name: 'soak-time',
  summary: 'How long a piece takes to arrive and when it may come out, for other thicknesses too',
  question: SoakTimeQuestion,
  answer: SoakTimeAnswer,
  run: (question, world) => {
    const met = exposureOf(question, world);
    const meter = workMeter();
    const { thicknessMm } = question;
    return {
      ...soakOf(question, thicknessMm, meter, met),
      ...met,
      others: question.alsoThicknessMm.map((other) => {
        const { value, reason } = orReason(() => soakOf(question, other, meter, met));
        return reason === null ? value : { thicknessMm: other, arrivalSeconds: null, reason };
      }),
      source: materialSource(question.material),
    };
  },
});

function soakOf(
  question: Question,
  thicknessMm: number,
  meter: (material: Material) => Material,
  { exposure }: MetExposure,
): z.infer<typeof Soak> {
  const { emissivity, filmWattsPerSquareMetreKelvin: film } = exposure;
  const from = startPiece(
    bodyOf({ ...question, thicknessMm }, meter, intervalsFor(question)),
    question.initialCelsius,
  );
  const soak = soakNeeded(
    {
      from,
      surroundings: surroundingsOf(question),
      emissivity,
      film,
      targetCelsius: question.targetCelsius ?? question.surroundingsCelsius,
      toleranceCelsius: question.toleranceCelsius,
    },
    question.holdSeconds,
  );
  return { thicknessMm, ...soak, shown: duration(soak.totalSeconds) };
}
