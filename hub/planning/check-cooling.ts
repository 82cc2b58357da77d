import type { CoolSegment } from '../contract/schedule.ts';
import { PhysicsError } from '../physics/errors.ts';
import { makeBody } from '../physics/heat/body.ts';
import { buriedCurve } from '../physics/heat/buried.ts';
import { type CoolingPoint, coolingCurves } from '../physics/heat/cooling.ts';
import { closedFurnaceCooling, judgeCooling } from '../physics/heat/cooling-rule.ts';
import { structuralSteel } from '../physics/heat/material.ts';
import type { CheckQuestion } from './check.ts';
import { mainSoak } from './course.ts';
import type { Fault, PlanPiece } from './types.ts';
import { windowFor } from './windows.ts';

/** Whether an anneal can cool slowly enough the way it is planned to. */

/** Radius of packing around the piece, m: a bucket. Common practice, no source. */
const PACKING_METRES = 0.15;
const SHOP_CELSIUS = 20;

export function checkCooling(question: CheckQuestion, piece: PlanPiece): Fault[] {
  if (piece.step !== 'full-anneal' && piece.step !== 'spheroidise') return [];
  const main = mainSoak(question.segments);
  const window = windowFor(piece.steel, piece.step);
  if (main === null || window?.maxCoolingCelsiusPerHour === undefined) return [];
  const segment = question.segments.findIndex((s, i) => i > main.index && s.kind === 'cool');
  const cool = question.segments[segment];
  if (cool?.kind !== 'cool') return [];
  const limit = window.maxCoolingCelsiusPerHour;
  const toCelsius = window.coolToCelsius ?? 540;
  const make = (code: Fault['code'], weight: Fault['weight'], params: Fault['params']): Fault => ({
    code,
    weight,
    segment,
    piece,
    params: { limitCelsiusPerHour: limit, toCelsius, medium: cool.medium, ...params },
  });
  if (cool.medium === 'furnace' && cool.targetCelsius > toCelsius + 10) {
    return [make('anneal-stops-too-hot', 'doubt', { targetCelsius: cool.targetCelsius })];
  }
  // A furnace that follows a rate follows it: the rate is what is judged.
  const planned = cool.medium === 'furnace' ? cool.maximumRateCelsiusPerHour : null;
  if (planned !== null) {
    return planned > limit * 1.05
      ? [make('anneal-cools-too-fast', 'wrong', { measuredCelsiusPerHour: planned })]
      : [];
  }
  const rate = fastest(cool, piece, main.soak.targetCelsius, toCelsius, limit);
  if (rate === null || rate <= limit * 1.05) return [];
  const weight = rate > 2 * limit ? 'wrong' : 'doubt';
  return [make('anneal-cools-too-fast', weight, { measuredCelsiusPerHour: rate })];
}

/** Mean rate over the range of the rule, °C/h; null when this way of cooling is not modelled that far. */
function fastest(
  cool: CoolSegment,
  piece: PlanPiece,
  fromCelsius: number,
  toCelsius: number,
  limit: number,
): number | null {
  const rule = { fromCelsius: fromCelsius - 20, toCelsius, mostCelsiusPerHour: limit };
  try {
    return judgeCooling(curveOf(cool.medium, piece, fromCelsius, toCelsius), rule).meanCelsiusPerHour;
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}

function curveOf(
  medium: CoolSegment['medium'],
  piece: PlanPiece,
  fromCelsius: number,
  toCelsius: number,
): readonly CoolingPoint[] {
  const untilCelsius = toCelsius - 15;
  const sectionMetres = piece.thicknessMm / 1000;
  switch (medium) {
    case 'furnace':
      return furnaceCurve(fromCelsius, untilCelsius);
    case 'ash':
    case 'vermiculite': {
      const width = piece.shape === 'plate' ? 3 * sectionMetres : (Math.PI / 4) * sectionMetres;
      return buriedCurve({
        steel: structuralSteel(),
        widthMetres: width,
        thicknessMetres: sectionMetres,
        packing: medium,
        canRadiusMetres: PACKING_METRES,
        startCelsius: fromCelsius,
        shopCelsius: SHOP_CELSIUS,
        untilCelsius,
      });
    }
    case 'still-air':
    case 'quench': {
      const body = makeBody({
        shape: piece.shape,
        sectionMetres,
        material: structuralSteel(),
        intervals: 10,
      });
      const air = medium === 'still-air' ? 'still-air' : 'still-oil';
      const curves = coolingCurves({ body, startCelsius: fromCelsius, medium: air, untilCelsius });
      return curves.slowest.map(({ atSeconds, coreCelsius }) => ({ atSeconds, celsius: coreCelsius }));
    }
    default:
      return medium satisfies never;
  }
}

function furnaceCurve(fromCelsius: number, untilCelsius: number): readonly CoolingPoint[] {
  const at = closedFurnaceCooling(fromCelsius);
  const points: CoolingPoint[] = [];
  for (let seconds = 0; seconds < 48 * 3600; seconds += 300) {
    const celsius = at(seconds);
    points.push({ atSeconds: seconds, celsius });
    if (celsius < untilCelsius) break;
  }
  return points;
}
