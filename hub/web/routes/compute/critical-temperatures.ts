import {
  CriticalTemperaturesAnswer,
  CriticalTemperaturesQuestion,
  type MagnetAnswer,
  MagnetQuestion,
  MagnetReport,
} from '../../../contract/compute/critical-temperatures.ts';
import type { Composition } from '../../../physics/steel/composition.ts';
import { criticalTemperatures, formulaOpinions } from '../../../physics/steel/critical.ts';
import { carbonClass } from '../../../physics/steel/iron-carbon.ts';
import { magnetAnswer } from '../../../physics/steel/magnet.ts';
import { defined } from '../need.ts';
import { answerOf } from './answers.ts';
import { steelAsked } from './asked.ts';
import { computation, type Frozen } from './computation.ts';

export const critical = computation({
  name: 'critical-temperatures',
  summary:
    'Ac1, Ac3, Acm, Ms, Mf, Ar1 and Ar3 of a steel with their bands, and what the formulas disagree on',
  question: CriticalTemperaturesQuestion,
  answer: CriticalTemperaturesAnswer,
  run: ({ coolingCelsiusPerHour, carbonInAustenitePercent, ...question }, world) => {
    const steel = world.steels.steelOf(question);
    const options = { coolingCelsiusPerHour, ...defined({ carbonInAustenitePercent }) };
    const found = criticalTemperatures(steel.composition, options);
    return {
      steel: steelAsked(steel),
      carbonClass: carbonClass(steel.composition),
      ac1: answerOf(found.ac1),
      ac3: answerOf(found.ac3),
      acm: answerOf(found.acm),
      ms: answerOf(found.ms),
      m90: answerOf(found.m90),
      mf: answerOf(found.mf),
      ar1: answerOf(found.ar1),
      ar3: answerOf(found.ar3),
      coolingCelsiusPerHour,
      opinions: formulaOpinions(steel.composition),
      magnet: magnetOf(steel.composition, 100),
    };
  },
});

export const magnet = computation({
  name: 'magnet',
  summary: 'Where a steel stops holding a magnet on heating, and what "magnet plus" comes to',
  question: MagnetQuestion,
  answer: MagnetReport,
  run: ({ offsetCelsius, ...question }, world) => {
    const steel = world.steels.steelOf(question);
    return { steel: steelAsked(steel), offsetCelsius, ...magnetOf(steel.composition, offsetCelsius) };
  },
});

function magnetOf(composition: Composition, offsetCelsius: number): Frozen<MagnetAnswer> {
  const found = magnetAnswer(composition, offsetCelsius);
  return { ...found, lost: answerOf(found.lost), plus: answerOf(found.plus) };
}
