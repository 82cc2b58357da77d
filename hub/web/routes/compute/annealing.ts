import {
  BuriedBarAnswer,
  BuriedBarQuestion,
  CoolingReadOff,
  CoolingRuleQuestion,
} from '../../../contract/compute/cooling.ts';
import { buriedCurve, packingOf } from '../../../physics/heat/buried.ts';
import { requireCurve } from '../../../physics/time-at-temperature/curve.ts';
import { heatProvenance } from './answers.ts';
import { evenly, workMeter } from './bounds.ts';
import { computation } from './computation.ts';
import { materialOf } from './pieces.ts';
import { readOff } from './read-off.ts';

export const coolingRule = computation({
  name: 'cooling-rule',
  summary: "Judge a measured cooling by an anneal's rule, and read t8/5 and a rate off it",
  question: CoolingRuleQuestion,
  answer: CoolingReadOff,
  run: ({ curve, ...question }) => {
    const startMs = requireCurve(curve)[0]?.atMs ?? 0;
    const points = curve.map(({ atMs, celsius }) => ({ atSeconds: (atMs - startMs) / 1000, celsius }));
    return readOff(points, question);
  },
});

export const buriedBar = computation({
  name: 'buried-bar',
  summary: 'What a bar buried in ash or vermiculite really does',
  question: BuriedBarQuestion,
  answer: BuriedBarAnswer,
  run: (question) => {
    const meter = workMeter();
    const packing = packingOf(question.packing);
    const curve = buriedCurve({
      steel: meter(materialOf(question.material)),
      widthMetres: question.widthMm / 1000,
      thicknessMetres: question.thicknessMm / 1000,
      packing: { ...packing, material: meter(packing.material) },
      canRadiusMetres: question.canRadiusMm / 1000,
      startCelsius: question.initialCelsius,
      shopCelsius: question.shopCelsius,
      hotCompanionKgPerMetre: question.hotCompanionKilogramsPerMetre,
      untilCelsius: question.untilCelsius,
    });
    const drawn = evenly(curve, question.points);
    return {
      curve: {
        seconds: drawn.map((point) => point.atSeconds),
        celsius: drawn.map((point) => point.celsius),
      },
      bar: readOff(curve, question),
      from: heatProvenance(packing),
    };
  },
});
