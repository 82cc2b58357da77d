import type { z } from 'zod';
import {
  ConductionAnswer,
  ConductionQuestion,
  type EnergyBalance,
} from '../../../contract/compute/conduction.ts';
import { duration } from '../../../contract/words/format.ts';
import { type HeatPoint, type Surroundings, surroundingsAt } from '../../../physics/heat/heat-curve.ts';
import {
  austeniteShare,
  heatContentJKg,
  type PieceState,
  startPiece,
  stepPiece,
} from '../../../physics/heat/piece.ts';
import { timeToTolerance } from '../../../physics/heat/soak-time.ts';
import { orReason } from './answers.ts';
import { workMeter } from './bounds.ts';
import { computation } from './computation.ts';
import { exposureOf, type MetExposure } from './exposure.ts';
import { bodyOf, columns, intervalsFor, materialSource, surroundingsOf } from './pieces.ts';

/** Steps of a curve at the least: backward Euler is of first order, and so many keep it within a kelvin or two. */
const LEAST_STEPS = 600;
const FOUR_HOURS = 4 * 3600;
/** A curve that shows an arrival goes on a little, so that one sees it level out. */
const BEYOND_ARRIVAL = 1.2;

export const conduction = computation({
  name: 'conduction',
  summary: 'Core, surface and mean of a piece over time, and when its core arrives',
  question: ConductionQuestion,
  answer: ConductionAnswer,
  run: (question, world) => {
    const from = startPiece(bodyOf(question, workMeter(), intervalsFor(question)), question.initialCelsius);
    const { exposure, exposureFrom } = exposureOf(question, world);
    const surroundings = surroundingsOf(question);
    const { toleranceCelsius } = question;
    const targetCelsius = question.targetCelsius ?? question.surroundingsCelsius;
    const given = { emissivity: exposure.emissivity, film: exposure.filmWattsPerSquareMetreKelvin };
    const goal = { targetCelsius, toleranceCelsius };
    const arrival = orReason(() => timeToTolerance({ from, surroundings, ...given, ...goal }));
    const seconds = question.seconds ?? lengthOf(arrival.value?.seconds);
    const run = follow(from, surroundings, exposure, { seconds, points: question.points });
    const there = arrival.value?.state;
    return {
      curves: columns(run.points),
      timeToToleranceSeconds: arrival.value?.seconds ?? null,
      timeToToleranceShown: arrival.value === null ? null : duration(arrival.value.seconds),
      reason: arrival.reason,
      ...goal,
      lagCelsius: there === undefined ? null : there.surfaceCelsius - there.coreCelsius,
      surfaceBeyondBand: arrival.value?.surfaceBeyondBand ?? null,
      energy: balanceOf(from, run.last),
      exposure,
      exposureFrom,
      austeniteShare: austeniteShare(run.last),
      source: materialSource(question.material),
    };
  },
});

function lengthOf(arrivalSeconds: number | undefined): number {
  return arrivalSeconds ? BEYOND_ARRIVAL * arrivalSeconds : FOUR_HOURS;
}

/** The curve of a piece with its last state: what the energy balance needs and a list of points does not hold. */
function follow(
  from: PieceState,
  surroundings: Surroundings,
  exposure: MetExposure['exposure'],
  length: { readonly seconds: number; readonly points: number },
): { readonly points: readonly HeatPoint[]; readonly last: PieceState } {
  const each = Math.ceil(LEAST_STEPS / (length.points - 1));
  const steps = each * (length.points - 1);
  const seconds = length.seconds / steps;
  const { emissivity, filmWattsPerSquareMetreKelvin: film } = exposure;
  let state = from;
  let surroundingsWereCelsius = surroundingsAt(surroundings, 0);
  const points = [pointOf(state, 0, surroundingsWereCelsius)];
  for (let i = 1; i <= steps; i += 1) {
    const atSeconds = i === steps ? length.seconds : i * seconds;
    const surroundingsCelsius = surroundingsAt(surroundings, atSeconds);
    state = stepPiece(state, { seconds, surroundingsCelsius, surroundingsWereCelsius, emissivity, film });
    surroundingsWereCelsius = surroundingsCelsius;
    if (i % each === 0) points.push(pointOf(state, atSeconds, surroundingsCelsius));
  }
  return { points, last: state };
}

function pointOf(state: PieceState, atSeconds: number, surroundingsCelsius: number): HeatPoint {
  const { coreCelsius, meanCelsius, surfaceCelsius } = state;
  return { atSeconds, surroundingsCelsius, coreCelsius, meanCelsius, surfaceCelsius };
}

function balanceOf(from: PieceState, last: PieceState): z.infer<typeof EnergyBalance> {
  const heatInJoulesPerKilogram = last.heatInJKg - from.heatInJKg;
  const heatContentRiseJoulesPerKilogram = heatContentJKg(last) - heatContentJKg(from);
  return {
    heatInJoulesPerKilogram,
    heatContentRiseJoulesPerKilogram,
    imbalanceJoulesPerKilogram: heatInJoulesPerKilogram - heatContentRiseJoulesPerKilogram,
  };
}
