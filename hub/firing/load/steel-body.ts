import type { LoadPiece } from '../../contract/load.ts';
import { PhysicsError } from '../../physics/errors.ts';
import { type Body, makeBody, type Shape } from '../../physics/heat/body.ts';
import { type Material, structuralSteel } from '../../physics/heat/material.ts';
import { transformingSteel } from '../../physics/heat/transforming-steel.ts';
import { type Composition, requireComposition } from '../../physics/steel/composition.ts';
import { criticalTemperatures } from '../../physics/steel/critical.ts';
import { slowCooledFractions } from '../../physics/steel/iron-carbon.ts';

/** A piece of the load made ready for conduction: its shape in control volumes, its steel with its own arrests. */

/** Control volumes from middle to skin: within 0.1 K of twenty of them in a 50 mm bar, at half the work. */
const INTERVALS = 10;
/** Heat of the whole transformation of eutectoid steel, J/kg (Hagel, Pound and Mehl 1956). */
const EUTECTOID_LATENT = 82_000;
/** Ferrite turns with less heat than pearlite and is not nothing: our floor for the share. */
const LEAST_PEARLITE = 0.3;
/** A transformation is spread over this much at least, K: the width of the eutectoid default. */
const LEAST_WIDTH = 15;

export interface LoadBody {
  readonly piece: LoadPiece;
  readonly part: 'only' | 'slowest' | 'quickest';
  readonly body: Body;
}

/**
 * The slowest and the quickest piece of a load, or the only one; empty for an empty load. Slow is what has much
 * mass a surface, and among equals what is thicker: both lengthen the way from the air to the core.
 */
export function bodiesOf(pieces: readonly LoadPiece[]): readonly LoadBody[] {
  const sorted = [...pieces].sort((a, b) => slowness(b) - slowness(a));
  const slowest = sorted[0];
  const quickest = sorted.at(-1);
  if (slowest === undefined || quickest === undefined) return [];
  if (slowness(slowest) === slowness(quickest)) return [loadBody(slowest, 'only')];
  return [loadBody(slowest, 'slowest'), loadBody(quickest, 'quickest')];
}

function loadBody(piece: LoadPiece, part: LoadBody['part']): LoadBody {
  const { shape, thicknessMm } = piece.section;
  const material = materialOf(piece.steel.composition);
  const body = makeBody({
    shape: shapeOf(shape),
    sectionMetres: thicknessMm / 1000,
    material,
    intervals: INTERVALS,
  });
  return { piece, part, body };
}

function shapeOf(shape: LoadPiece['section']['shape']): Shape {
  return shape === 'cylinder' ? 'bar' : shape;
}

/** Volume over surface, mm, with a little of the thickness to part the equal. */
function slowness({ section }: LoadPiece): number {
  const { shape, thicknessMm } = section;
  const share = shape === 'plate' ? 1 / 2 : shape === 'sphere' ? 1 / 6 : 1 / 4;
  return thicknessMm * share + thicknessMm * 1e-6;
}

/** Tables of a material take time to build, and a load is mostly of one steel. */
const remembered = new Map<string, Material>();
const MOST_REMEMBERED = 64;

/**
 * The steel of a composition with its transformation where this steel has it. What no formula answers for (outside
 * every validity) is computed as carbon steel of EN 1993-1-2.
 */
export function materialOf(composition: Readonly<Record<string, number | undefined>>): Material {
  const key = JSON.stringify(Object.entries(composition).sort(([a], [b]) => (a < b ? -1 : 1)));
  const found = remembered.get(key);
  if (found !== undefined) return found;
  const made = transforming(composition) ?? structuralSteel();
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(key, made);
  return made;
}

function transforming(record: Readonly<Record<string, number | undefined>>): Material | null {
  try {
    const composition: Composition = requireComposition(record);
    const { ac1, ac3, ar1, ar3 } = criticalTemperatures(composition);
    if (ac1.value === null) return null;
    const heatingToCelsius = Math.max(ac1.value + LEAST_WIDTH, ac3.value ?? 0);
    const coolingFromCelsius = Math.min(ac1.value, Math.max(ar3.value ?? 0, (ar1.value ?? 0) + LEAST_WIDTH));
    const coolingToCelsius = Math.min(ar1.value ?? coolingFromCelsius, coolingFromCelsius - LEAST_WIDTH);
    const pearlite = Math.max(LEAST_PEARLITE, slowCooledFractions(composition.C).pearlite);
    return transformingSteel({
      heatingFromCelsius: ac1.value,
      heatingToCelsius,
      coolingFromCelsius,
      coolingToCelsius,
      latentJoulesPerKg: EUTECTOID_LATENT * pearlite,
    });
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}
