/**
 * The conduction step, as the judges run it: one reading a step.
 * Run with `npx vitest bench --run tests/bench/conduction.bench.ts`. Figures only, no assertion.
 */
import { bench, describe } from 'vitest';
import { makeBody } from '../../hub/physics/heat/body.ts';
import { structuralSteel } from '../../hub/physics/heat/material.ts';
import { type PieceState, startPiece, stepPiece } from '../../hub/physics/heat/piece.ts';
import { timeToTolerance } from '../../hub/physics/heat/soak-time.ts';
import { transformingSteel } from '../../hub/physics/heat/transforming-steel.ts';

const FURNACE = { surroundingsCelsius: 815, emissivity: 0.8, film: 10 } as const;

function at(celsius: number, material = structuralSteel()): PieceState {
  return startPiece(makeBody({ shape: 'bar', sectionMetres: 0.025, material }), celsius);
}

describe('one reading carried through a 25 mm bar of 21 nodes', () => {
  const warm = at(400);
  const atPeak = at(733);
  const atArrest = at(724, transformingSteel());
  const soaked = at(814);

  bench('1 s, heating at 400 °C', () => void stepPiece(warm, { ...FURNACE, seconds: 1 }));
  bench('1 s, across the EN peak', () => void stepPiece(atPeak, { ...FURNACE, seconds: 1 }));
  bench('1 s, across a narrow arrest', () => void stepPiece(atArrest, { ...FURNACE, seconds: 1 }));
  bench('1 s, soaked through', () => void stepPiece(soaked, { ...FURNACE, seconds: 1 }));
  bench('10 min after a gap, heating', () => void stepPiece(warm, { ...FURNACE, seconds: 600 }));
});

describe('a whole question', () => {
  const cold = at(20);
  bench('time for the core to arrive, cold to 810 °C', () => {
    const question = { from: cold, surroundings: 815, emissivity: 0.8, film: 10 };
    timeToTolerance({ ...question, targetCelsius: 815, toleranceCelsius: 5 });
  });
});
