import {
  TemperingAnswer,
  TemperingCurveAnswer,
  TemperingCurveQuestion,
  TemperingQuestion,
} from '../../../contract/compute/tempering.ts';
import { equivalentTemper } from '../../../physics/steel/hollomon-jaffe.ts';
import { quenchedHardness } from '../../../physics/steel/quenched-hardness.ts';
import type { TemperHistory } from '../../../physics/steel/temper-history.ts';
import { temperedHardness } from '../../../physics/steel/tempered-hardness.ts';
import { answerOf, answerOrReason, estimateOf } from './answers.ts';
import { steelAsked, temperOf } from './asked.ts';
import { computation } from './computation.ts';

export const tempering = computation({
  name: 'tempering',
  summary: 'Hollomon-Jaffe parameter of a temper and the hardness it leaves',
  question: TemperingQuestion,
  answer: TemperingAnswer,
  run: (question, world) => {
    const steel = world.steels.steelOf(question);
    const history = temperOf(question);
    const { parameter, constant, hardnessHrc, opinions } = temperedHardness(steel, history);
    return {
      steel: steelAsked(steel),
      parameter,
      constant,
      hardnessHrc: answerOf(hardnessHrc),
      opinions: opinions.map(estimateOf),
      equivalent: equivalentOf(history, constant),
    };
  },
});

function equivalentOf(history: TemperHistory, constant: number) {
  if (history.kind === 'hold') return null;
  const { referenceCelsius, equivalentHours, longestGapMs } = equivalentTemper(history.readings, constant);
  return { referenceCelsius, hours: equivalentHours, longestGapMs };
}

export const temperingCurve = computation({
  name: 'tempering-curve',
  summary: 'Hardness over tempering temperature for one length of time',
  question: TemperingCurveQuestion,
  answer: TemperingCurveAnswer,
  run: ({ hours, fromCelsius, toCelsius, points, ...question }, world) => {
    const steel = world.steels.steelOf(question);
    const step = (toCelsius - fromCelsius) / (points - 1);
    return {
      steel: steelAsked(steel),
      hours,
      quenchedHardnessHrc: answerOrReason('HRC', () => quenchedHardness(steel.composition.C)),
      points: Array.from({ length: points }, (_, i) => {
        const celsius = fromCelsius + i * step;
        const { hardnessHrc } = temperedHardness(steel, { kind: 'hold', celsius, hours });
        return { celsius, hardnessHrc: answerOf(hardnessHrc) };
      }),
    };
  },
});
