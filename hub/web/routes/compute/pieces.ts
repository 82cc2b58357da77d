import type { HeatCurves, PieceMaterial, PieceShape } from '../../../contract/compute/piece.ts';
import { type Body, makeBody, type Shape } from '../../../physics/heat/body.ts';
import { alongPoints, type HeatPoint, type Surroundings } from '../../../physics/heat/heat-curve.ts';
import { type Material, plainMaterial, structuralSteel } from '../../../physics/heat/material.ts';
import { transformingSteel } from '../../../physics/heat/transforming-steel.ts';
import { defined } from '../need.ts';

/** Pieces, materials and chambers as a question names them. */

interface PieceQuestion {
  readonly shape: PieceShape;
  readonly thicknessMm: number;
  readonly material: PieceMaterial;
}

export function shapeOf(shape: PieceShape): Shape {
  return shape === 'cylinder' ? 'bar' : shape;
}

export function bodyOf(
  question: PieceQuestion,
  meter: (material: Material) => Material,
  intervals?: number,
): Body {
  return makeBody({
    shape: shapeOf(question.shape),
    sectionMetres: question.thicknessMm / 1000,
    material: meter(materialOf(question.material)),
    ...defined({ intervals }),
  });
}

export function materialOf(material: PieceMaterial): Material {
  switch (material.kind) {
    case 'structural':
      return structuralSteel();
    case 'plain':
      return plainMaterial({
        densityKgM3: material.densityKilogramsPerCubicMetre,
        specificHeatJKgK: material.specificHeatJoulesPerKilogramKelvin,
        conductivityWmK: material.conductivityWattsPerMetreKelvin,
      });
    case 'transforming': {
      const { kind: _, latentJoulesPerKilogram: latentJoulesPerKg, ...rest } = material;
      return transformingSteel(defined({ ...rest, latentJoulesPerKg }));
    }
    default:
      return material satisfies never;
  }
}

export function materialSource(material: PieceMaterial): string {
  switch (material.kind) {
    case 'structural':
      return 'EN 1993-1-2:2005, 3.4.1: carbon steel with its transformation peak at 735 °C';
    case 'transforming':
      return 'EN 1993-1-2:2005 without its peak; heat of transformation 82 J/g, Hagel, Pound and Mehl 1956';
    case 'plain':
      return 'constant properties as given';
    default:
      return material satisfies never;
  }
}

interface ChamberQuestion {
  readonly surroundingsCelsius: number;
  readonly surroundingsCurve?:
    | readonly { readonly atSeconds: number; readonly celsius: number }[]
    | undefined;
}

/**
 * A chamber that changes is followed in short steps; half of the usual control volumes (20) keep that within the
 * bounds. Slow changes leave no steep gradient in the piece that would want more of them.
 */
export function intervalsFor(question: ChamberQuestion): number | undefined {
  return question.surroundingsCurve === undefined ? undefined : 10;
}

export function surroundingsOf(question: ChamberQuestion): Surroundings {
  return question.surroundingsCurve === undefined
    ? question.surroundingsCelsius
    : alongPoints(question.surroundingsCurve);
}

export function columns(points: readonly HeatPoint[]): HeatCurves {
  return {
    seconds: points.map((point) => point.atSeconds),
    coreCelsius: points.map((point) => point.coreCelsius),
    surfaceCelsius: points.map((point) => point.surfaceCelsius),
    meanCelsius: points.map((point) => point.meanCelsius),
  };
}
