import {
  CarbonDiffusionAnswer,
  CarbonDiffusionQuestion,
  DecarburisationAnswer,
  DecarburisationQuestion,
} from '../../../contract/compute/carbon.ts';
import { type Composition, percentOf } from '../../../physics/steel/composition.ts';
import { criticalTemperatures } from '../../../physics/steel/critical.ts';
import {
  type Alloying,
  AUSTENITE_FORMS,
  alloyFactor,
  austeniteDiffusivity,
  austeniteDiffusivityBand,
  ferriteDiffusivity,
} from '../../../physics/time-at-temperature/carbon-diffusivity.ts';
import { decarburisedDepth } from '../../../physics/time-at-temperature/decarburisation.ts';
import { bandOf } from './answers.ts';
import { curveOf, measuredCautions, steelAsked } from './asked.ts';
import { computation } from './computation.ts';

const AUSTENITE_SOURCE =
  'Tibbetts 1980; band over Slycke and Ericsson 1981, Ågren 1986, Wells, Batz and Mehl 1950; not the textbook pair, which is about three times too low at 0.8 % C';
const FERRITE_SOURCE = 'measured: Budke and Herzig 1991; band to Wert 1950';

export const carbonDiffusion = computation({
  name: 'carbon-diffusion',
  summary: 'Diffusivity of carbon in austenite or ferrite',
  question: CarbonDiffusionQuestion,
  answer: CarbonDiffusionAnswer,
  run: ({ phase, celsius, carbonPercent, alloy }) => {
    const austenite = phase === 'austenite';
    const band = austenite ? austeniteDiffusivityBand(celsius, carbonPercent) : ferriteDiffusivity(celsius);
    return {
      phase,
      celsius,
      diffusivitySquareMetresPerSecond: bandOf(band, 1e12, 'µm²/s'),
      forms: (austenite ? AUSTENITE_FORMS : []).map((form) => ({
        form,
        squareMetresPerSecond: austeniteDiffusivity(form, celsius, carbonPercent),
      })),
      alloyFactor:
        austenite && alloy !== undefined
          ? alloyFactor(alloyingOf({ ...requireAmounts(alloy), C: carbonPercent }))
          : null,
      source: austenite ? AUSTENITE_SOURCE : FERRITE_SOURCE,
    };
  },
});

type Amounts = Readonly<Record<string, number | undefined>>;

function requireAmounts(alloy: Amounts): Partial<Composition> {
  return Object.fromEntries(Object.entries(alloy).filter(([, percent]) => percent !== undefined));
}

function alloyingOf(composition: Composition): Alloying {
  const of = (element: 'Si' | 'Mn' | 'Cr' | 'Ni' | 'Mo' | 'Al' | 'Cu' | 'V'): number =>
    percentOf(composition, element);
  return {
    si: of('Si'),
    mn: of('Mn'),
    cr: of('Cr'),
    ni: of('Ni'),
    mo: of('Mo'),
    al: of('Al'),
    cu: of('Cu'),
    v: of('V'),
  };
}

/** Where the model takes Ac1 when it is not told, °C: the eutectoid line. */
const EUTECTOID_CELSIUS = 727;
const AC1_TAKEN = { low: 700, high: 900 } as const;

export const decarburisation = computation({
  name: 'decarburisation',
  summary: 'How deep a firing can have decarburised a piece: an upper bound',
  question: DecarburisationQuestion,
  answer: DecarburisationAnswer,
  run: (question, world) => {
    const steel = world.steels.steelOf(question);
    const ac1Celsius = question.ac1Celsius ?? usualAc1(steel.composition);
    const found = decarburisedDepth({
      curve: curveOf(question),
      carbonPercent: steel.composition.C,
      alloy: alloyingOf(steel.composition),
      ac1Celsius,
    });
    return {
      steel: steelAsked(steel),
      depthTo50Metres: bandOf(found.depthTo50Metres, 1000, 'mm'),
      depthTo90Metres: bandOf(found.depthTo90Metres, 1000, 'mm'),
      depthTo95Metres: bandOf(found.depthTo95Metres, 1000, 'mm'),
      dtSquareMetres: bandOf(found.dtM2, 1e6, 'mm²'),
      ac1Celsius,
      secondsCounted: found.secondsCounted,
      secondsBelow: found.secondsBelow,
      cautions: measuredCautions(question, found.cautions),
      upperBound: true as const,
      source: AUSTENITE_SOURCE,
    };
  },
});

function usualAc1(composition: Composition): number {
  const { value } = criticalTemperatures(composition).ac1;
  const taken = value !== null && value >= AC1_TAKEN.low && value <= AC1_TAKEN.high;
  return taken ? value : EUTECTOID_CELSIUS;
}
