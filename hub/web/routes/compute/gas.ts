import {
  EnduranceAnswer,
  EnduranceQuestion,
  OrificeFlowAnswer,
  OrificeFlowQuestion,
  VapourPressureAnswer,
  VapourPressureQuestion,
} from '../../../contract/compute/gas.ts';
import { endurance, lastsFor } from '../../../physics/gas-supply/endurance.ts';
import { orificeReport, requirePropane } from '../../../physics/gas-supply/orifice-report.ts';
import { vapourPressureReport } from '../../../physics/gas-supply/vapour-pressure-report.ts';
import { defined } from '../need.ts';
import { computation } from './computation.ts';

export const orificeFlow = computation({
  name: 'gas/orifice-flow',
  summary: 'Flow and heat of propane through a jet, choked or subsonic',
  question: OrificeFlowQuestion,
  answer: OrificeFlowAnswer,
  run: ({ atmospherePa, ...jet }) => orificeReport({ ...jet, ...defined({ atmospherePa }) }),
});

export const vapourPressure = computation({
  name: 'gas/vapour-pressure',
  summary: 'Pressure over liquid propane by its temperature, or the other way round',
  question: VapourPressureQuestion,
  answer: VapourPressureAnswer,
  run: ({ gas, celsius, absolutePa }) => {
    const report = vapourPressureReport({ gas, ...defined({ celsius, absolutePascals: absolutePa }) });
    return {
      celsius: report.celsius,
      absolutePa: report.absolutePascals,
      gaugePa: report.gaugePascals,
      commercialHighGaugePa: report.commercialHighGaugePascals,
      latentHeatJoulesPerKilogram: report.latentHeatJoulesPerKilogram,
    };
  },
});

export const gasEndurance = computation({
  name: 'gas/endurance',
  summary: 'How long the gas lasts, as a range, by mass and by what boiling can keep up with',
  question: EnduranceQuestion,
  answer: EnduranceAnswer,
  run: ({ gas, contents, firingHours, draw, drawErrorShare, cylinders, ...known }) => {
    requirePropane(gas);
    const band = typeof contents === 'number' ? { low: contents, value: contents, high: contents } : contents;
    const report = endurance({ contents: band, draw, drawErrorShare, cylinders, ...defined(known) });
    const { low, value, high, ...rest } = report;
    const lasts = firingHours === undefined ? null : lastsFor(report, firingHours);
    return { lowHours: low, hours: value, highHours: high, ...rest, lasts };
  },
});
