import type { z } from 'zod';
import { CoolingAnswer, type CoolingCurve, CoolingQuestion } from '../../../contract/compute/cooling.ts';
import type { Provenance } from '../../../contract/compute/estimate.ts';
import type { Medium } from '../../../contract/compute/piece.ts';
import { PhysicsError } from '../../../physics/errors.ts';
import type { Body } from '../../../physics/heat/body.ts';
import { coolingCurves } from '../../../physics/heat/cooling.ts';
import { closedFurnaceCooling } from '../../../physics/heat/cooling-rule.ts';
import { type HeatPoint, heatCurve } from '../../../physics/heat/heat-curve.ts';
import { mediumOf } from '../../../physics/heat/media.ts';
import { bandOf, heatProvenance } from './answers.ts';
import { evenly, workMeter } from './bounds.ts';
import { computation, type Frozen } from './computation.ts';
import { exposureOf } from './exposure.ts';
import { bodyOf, columns } from './pieces.ts';
import { coreOf, readOff } from './read-off.ts';
import type { World } from './world.ts';

type Question = z.output<typeof CoolingQuestion>;
type Curve = Frozen<z.infer<typeof CoolingCurve>>;

export const cooling = computation({
  name: 'cooling',
  summary: 'Cooling of a piece in a medium, with t8/5 and the rule of an anneal',
  question: CoolingQuestion,
  answer: CoolingAnswer,
  run: (question, world) => {
    const { medium } = question;
    if (medium === 'closed-furnace')
      return inFurnace(question, bodyOf(question, workMeter(), SLOW_INTERVALS), world);
    requireNoFurnace(question);
    return inMedium(question, bodyOf(question, workMeter()), medium);
  },
});

/** A band's end is not followed to the medium itself, which it would only reach after for ever. */
const USUAL_END_CELSIUS = 100;
const LEAST_ABOVE_MEDIUM = 20;

function inMedium(question: Question, body: Body, id: Medium): Frozen<z.infer<typeof CoolingAnswer>> {
  const medium = mediumOf(id);
  const mediumCelsius = question.mediumCelsius ?? medium.usualCelsius;
  const untilCelsius =
    question.untilCelsius ?? Math.max(USUAL_END_CELSIUS, mediumCelsius + LEAST_ABOVE_MEDIUM);
  const plan = { body, startCelsius: question.initialCelsius, medium: id, mediumCelsius, untilCelsius };
  const curves = coolingCurves(plan);
  const typical = curveOf(question, curves.typical);
  const slowest = curveOf(question, curves.slowest);
  const fastest = curveOf(question, curves.fastest);
  const [low, value, high] = [fastest, typical, slowest].map((curve) => curve.core.t85Seconds ?? null);
  const known = typeof low === 'number' && typeof value === 'number' && typeof high === 'number';
  return {
    typical,
    slowest,
    fastest,
    t85Seconds: known ? bandOf({ low, value, high }, 1, 's') : null,
    mediumCelsius,
    exposureFrom: null,
    from: heatProvenance(curves),
  };
}

function curveOf(question: Question, points: readonly HeatPoint[]): Curve {
  return { curves: columns(evenly(points, question.points)), core: readOff(coreOf(points), question) };
}

function requireNoFurnace({ furnace, medium }: Question): void {
  if (furnace === undefined) return;
  throw new PhysicsError(
    'bad-input',
    `${medium} is no furnace: leave furnace out, or ask for the medium closed-furnace`,
  );
}

const FURNACE_FROM: Provenance = {
  standing: 'common-practice',
  source:
    'small closed electric furnaces: about 150 °C/h at 800 °C falling to 50 at 500; no claim below 450 °C',
};
const FURNACE_STEP_SECONDS = 60;
/** In hours of cooling a piece is nearly as hot inside as outside: a few control volumes will do. */
const SLOW_INTERVALS = 6;

function inFurnace(question: Question, body: Body, world: World): Frozen<z.infer<typeof CoolingAnswer>> {
  if (question.mediumCelsius !== undefined || question.untilCelsius !== undefined) {
    throw new PhysicsError(
      'bad-input',
      'a closed furnace has no fixed temperature and ends at 450 °C: leave mediumCelsius and untilCelsius out',
    );
  }
  const startCelsius = question.initialCelsius;
  const surroundings = closedFurnaceCooling(startCelsius);
  const { furnace } = question;
  const { exposure, exposureFrom } = exposureOf({ furnace, surroundingsCelsius: startCelsius }, world);
  const { emissivity, filmWattsPerSquareMetreKelvin: film } = exposure;
  const plan = { body, startCelsius, surroundings, emissivity, film };
  const curve = heatCurve({ ...plan, seconds: lastKnown(surroundings), everySeconds: FURNACE_STEP_SECONDS });
  const typical = curveOf(question, curve);
  return {
    typical,
    slowest: null,
    fastest: null,
    t85Seconds: null,
    mediumCelsius: null,
    exposureFrom,
    from: FURNACE_FROM,
  };
}

/** The last minute of which anything is known of the furnace, s. */
function lastKnown(chamber: (seconds: number) => number): number {
  let seconds = FURNACE_STEP_SECONDS;
  for (;;) {
    try {
      chamber(seconds + FURNACE_STEP_SECONDS);
    } catch (fault) {
      if (fault instanceof PhysicsError) return seconds;
      throw fault;
    }
    seconds += FURNACE_STEP_SECONDS;
  }
}
