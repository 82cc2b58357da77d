/**
 * How fast a type K emf becomes a temperature: figures only, no assertion.
 * Run: npx vitest bench --run tests/bench/thermocouple-inverse.bench.ts
 */
import { bench, describe } from 'vitest';
import { emfMillivolts } from '../../hub/physics/thermocouple.ts';
import { celsiusFromEmf } from '../../hub/physics/thermocouple-inverse.ts';
import { hotJunctionCelsius } from '../../hub/physics/thermocouple-junction.ts';
import { inversePieces } from '../reference/its90-inverse.ts';

const emfs = Array.from({ length: 1000 }, (_, i) => emfMillivolts('K', -200 + i * 1.57));

/** Takes the results, so that the work is not optimised away. */
const sink = new Float64Array(emfs.length);

function publishedPolynomial(millivolts: number): number {
  const piece = inversePieces.K.find((each) => millivolts <= each.highMillivolts);
  return (
    piece?.coefficients.reduceRight((sum, coefficient) => sum * millivolts + coefficient, 0) ?? Number.NaN
  );
}

describe('1000 conversions, type K, -200 to 1368 °C', () => {
  bench('solved inverse', () => {
    emfs.forEach((millivolts, i) => {
      sink[i] = celsiusFromEmf('K', millivolts);
    });
  });

  bench('solved inverse with cold junction', () => {
    emfs.forEach((millivolts, i) => {
      sink[i] = hotJunctionCelsius({ type: 'K', millivolts: millivolts - 1, coldJunctionCelsius: 25 });
    });
  });

  bench('published inverse polynomial, for comparison', () => {
    emfs.forEach((millivolts, i) => {
      sink[i] = publishedPolynomial(millivolts);
    });
  });
});
