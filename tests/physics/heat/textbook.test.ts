/** Worked examples of heat-transfer textbooks (from memory: Incropera; Çengel; each recomputed exactly). */
import { describe, expect, it } from 'vitest';
import { makeBody, type Shape } from '../../../hub/physics/heat/body.ts';
import { plainMaterial } from '../../../hub/physics/heat/material.ts';
import { type PieceState, startPiece, stepPiece } from '../../../hub/physics/heat/piece.ts';
import { timeToTolerance } from '../../../hub/physics/heat/soak-time.ts';

const KELVIN = 273.15;

interface Example {
  readonly shape: Shape;
  readonly sectionMetres: number;
  readonly k: number;
  readonly rho: number;
  readonly c: number;
  readonly h: number;
}

function pieceAt(example: Example, celsius: number): PieceState {
  const { shape, sectionMetres, k, rho, c } = example;
  const material = plainMaterial({ densityKgM3: rho, specificHeatJKgK: c, conductivityWmK: k });
  return startPiece(makeBody({ shape, sectionMetres, material }), celsius);
}

/** Seconds until the core reaches a temperature to within 0.1 K, hence a hair earlier. */
function secondsToCore(example: Example, from: number, surroundings: number, target: number): number {
  const start = pieceAt(example, from);
  return timeToTolerance({
    from: start,
    surroundings,
    emissivity: 0,
    film: example.h,
    targetCelsius: target,
    toleranceCelsius: 0.1,
  }).seconds;
}

describe('textbook worked examples', () => {
  it('steel balls of 12 mm fall from 1150 to 400 K in air of 325 K in 1122 s', () => {
    const balls: Example = { shape: 'sphere', sectionMetres: 0.012, k: 40, rho: 7800, c: 600, h: 20 };
    const seconds = secondsToCore(balls, 1150 - KELVIN, 325 - KELVIN, 400 - KELVIN);
    expect(seconds / 1122.2).toBeGreaterThan(0.985);
    expect(seconds / 1122.2).toBeLessThan(1.025);
  });

  it('the centre of a 100 mm shaft takes 905.9 s to 800 K in gas of 1200 K, not the lumped 859 s', () => {
    const shaft: Example = { shape: 'bar', sectionMetres: 0.1, k: 51.2, rho: 7832, c: 541, h: 100 };
    const seconds = secondsToCore(shaft, 300 - KELVIN, 1200 - KELVIN, 800 - KELVIN);
    expect(Math.abs(seconds - 905.9)).toBeLessThan(9);
    expect(seconds).toBeGreaterThan(859 + 30);
  });

  it('an annealing plate of 100 mm reaches 550 °C in its middle after 857 s, its face then at 579', () => {
    const plate: Example = { shape: 'plate', sectionMetres: 0.1, k: 48, rho: 7830, c: 550, h: 250 };
    expect(Math.abs(secondsToCore(plate, 200, 800, 550) - 857)).toBeLessThan(9);
    let state = pieceAt(plate, 200);
    for (let i = 0; i < 857; i++) {
      state = stepPiece(state, { seconds: 1, surroundingsCelsius: 800, emissivity: 0, film: 250 });
    }
    expect(Math.abs(state.surfaceCelsius - 579)).toBeLessThan(1);
    expect(Math.abs(state.coreCelsius - 550)).toBeLessThan(1);
  });

  it('a brass plate of 40 mm is at 279.6 °C on its face after 7 min in a 500 °C oven', () => {
    const c = 110 / (33.9e-6 * 8530);
    const brass: Example = { shape: 'plate', sectionMetres: 0.04, k: 110, rho: 8530, c, h: 120 };
    let state = pieceAt(brass, 20);
    for (let i = 0; i < 420; i++) {
      state = stepPiece(state, { seconds: 1, surroundingsCelsius: 500, emissivity: 0, film: 120 });
    }
    expect(Math.abs(state.surfaceCelsius - 279.6)).toBeLessThan(0.5);
  });

  it('a small piece follows Newton: 194 °C after 900 s from 800 °C with a time constant of 600 s', () => {
    // rho c V/(h A) = 7850 × 600 × 0.0005 / 3.925 = 600 s for a 1 mm plate
    const foil: Example = { shape: 'plate', sectionMetres: 0.001, k: 50, rho: 7850, c: 600, h: 3.925 };
    let state = pieceAt(foil, 800);
    for (let i = 0; i < 900; i++) {
      state = stepPiece(state, { seconds: 1, surroundingsCelsius: 20, emissivity: 0, film: 3.925 });
    }
    expect(Math.abs(state.meanCelsius - 194)).toBeLessThan(0.6);
  });
});
