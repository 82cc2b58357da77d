import { expect, test } from 'vitest';
import { seededRandom } from '../../sensors-sim/random.ts';

const draw = (seed: number, label: string, count: number) => {
  const random = seededRandom(seed, label);
  return Array.from({ length: count }, () => random.normal());
};

test('the same seed and label give the same stream, any other gives another', () => {
  expect(draw(1, 'a', 50)).toEqual(draw(1, 'a', 50));
  expect(draw(2, 'a', 50)).not.toEqual(draw(1, 'a', 50));
  expect(draw(1, 'b', 50)).not.toEqual(draw(1, 'a', 50));
});

test('normal draws have mean 0, deviation 1 and the 68 % of a normal curve', () => {
  const values = draw(7, 'moments', 20_000);
  const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
  const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / values.length;
  // Four standard errors of 20 000 draws: 0.028, 0.04 and 0.013.
  expect(Math.abs(mean)).toBeLessThan(0.028);
  expect(Math.abs(variance - 1)).toBeLessThan(0.04);
  expect(Math.abs(values.filter((each) => Math.abs(each) < 1).length / values.length - 0.6827)).toBeLessThan(
    0.013,
  );
});

test('near seeds do not give near streams', () => {
  const first = Array.from({ length: 200 }, (_, seed) => seededRandom(seed, 'x').uniform());
  const mean = first.reduce((sum, each) => sum + each, 0) / first.length;
  expect(Math.abs(mean - 0.5)).toBeLessThan(0.082);
  expect(new Set(first).size).toBe(200);
});
