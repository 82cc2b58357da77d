import {
  CoolingStructuresAnswer,
  CoolingStructuresQuestion,
  MartensiteAnswer,
  MartensiteQuestion,
  STRUCTURES,
} from '../../../contract/compute/martensite.ts';
import { showTo } from '../../../contract/significant.ts';
import {
  AUSTENITISING_J_PER_MOL,
  logLimitingRate,
  type RateLimit,
  structureHardness,
  timeTemperatureKelvin,
} from '../../../physics/steel/creusot-loire.ts';
import { criticalTemperatures } from '../../../physics/steel/critical.ts';
import { EUTECTOID_CARBON_PERCENT, slowCooledFractions } from '../../../physics/steel/iron-carbon.ts';
import { DISSOLVED_CARBON_PERCENT, retainedAustenite } from '../../../physics/steel/martensite.ts';
import { halfMartensiteHardness, quenchedHardness } from '../../../physics/steel/quenched-hardness.ts';
import { defined } from '../need.ts';
import { answerOf, answerOrReason, estimateOf, orReason } from './answers.ts';
import { steelAsked } from './asked.ts';
import { computation } from './computation.ts';

export const martensite = computation({
  name: 'martensite',
  summary: 'Ms, retained austenite and hardness after a quench',
  question: MartensiteQuestion,
  answer: MartensiteAnswer,
  run: ({ carbonInAustenitePercent, quenchCelsius, ...question }, world) => {
    const steel = world.steels.steelOf(question);
    const { composition } = steel;
    const carbonAssumed = carbonInAustenitePercent === undefined && composition.C > EUTECTOID_CARBON_PERCENT;
    const bulk = carbonAssumed ? DISSOLVED_CARBON_PERCENT.usual : composition.C;
    const carbon = carbonInAustenitePercent ?? bulk;
    const { ms, m90, mf } = criticalTemperatures(composition, { carbonInAustenitePercent: carbon });
    const retained = { composition, quenchCelsius, ...defined({ carbonInAustenitePercent }) };
    return {
      steel: steelAsked(steel),
      carbonInAustenitePercent: carbon,
      carbonAssumed,
      ms: answerOf(ms),
      m90: answerOf(m90),
      mf: answerOf(mf),
      retainedAustenite: answerOf(retainedAustenite(retained)),
      quenchedHardnessHrc: answerOrReason('HRC', () => quenchedHardness(carbon)),
      halfMartensiteHrc: answerOrReason('HRC', () => halfMartensiteHardness(carbon)),
    };
  },
});

const LIMITS: readonly RateLimit[] = [
  'martensite-100',
  'martensite-90',
  'martensite-50',
  'bainite-100',
  'ferrite-pearlite-90',
];
const KELVIN = 273.15;

export const coolingStructures = computation({
  name: 'cooling-structures',
  summary: 'Which structures a cooling rate leaves and how hard they are (Maynier 1978)',
  question: CoolingStructuresQuestion,
  answer: CoolingStructuresAnswer,
  run: ({ coolingCelsiusPerHour, austenitisedCelsius, austenitisedHours, ...question }, world) => {
    const steel = world.steels.steelOf(question);
    const { composition } = steel;
    const kelvin = timeTemperatureKelvin(austenitisedCelsius, austenitisedHours, AUSTENITISING_J_PER_MOL);
    return {
      steel: steelAsked(steel),
      limits: LIMITS.map((limit) => {
        const celsiusPerHour = 10 ** logLimitingRate(limit, composition, kelvin - KELVIN);
        // The logarithm is printed to hundredths, so two figures are all there is.
        const exponent = Math.floor(Math.log10(celsiusPerHour)) - 1;
        return { limit, celsiusPerHour, shown: showTo(celsiusPerHour, exponent, '°C/h') };
      }),
      hardnessHv: STRUCTURES.map((structure) => ({
        structure,
        hardness: estimateOf(structureHardness(structure, composition, coolingCelsiusPerHour)),
      })),
      slowCooled: orReason(() => slowCooledFractions(composition.C), ['out-of-range']).value,
    };
  },
});
