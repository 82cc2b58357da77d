/**
 * Hollomon & Jaffe 1945: plain carbon steels, HRC after 10 s to 24 h at 100 to 700 °C.
 *
 * The 0.98 % rows were held at 406 and 602 °C where the others were at 400 and
 * 600. Their entry for 602 °C after 24 h repeats the one for 700 °C and is taken
 * for a copying fault: it is left out.
 */
import type { Composition } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { TemperRun, TemperSet } from './temper-set.ts';

const FROM: Provenance = {
  standing: 'published-secondary',
  source: 'Hollomon & Jaffe, Trans. AIME 162 (1945) 223-249, via a public compilation of tempering data',
};

const CELSIUS = [100, 150, 200, 250, 300, 400, 500, 600, 700];
const CELSIUS_098 = [100, 150, 200, 250, 300, 406, 500, 602, 700];
const CELSIUS_098_LAST = [100, 150, 200, 250, 300, 406, 500, 700];
const SECONDS_PER_HOUR = 3600;

function run(seconds: number, hrc: readonly number[], celsius: readonly number[] = CELSIUS): TemperRun {
  return { hours: seconds / SECONDS_PER_HOUR, celsius, hrc };
}

function set(composition: Composition, quenchedHrc: number, runs: readonly TemperRun[]): TemperSet {
  const carbon = composition.C.toFixed(2);
  return {
    id: `hollomon-jaffe-${carbon}`,
    title: `plain carbon ${carbon} %, Hollomon & Jaffe 1945`,
    composition,
    quenchedHrc,
    timeStated: true,
    secondaryHardening: false,
    runs,
    from: FROM,
  };
}

export const HOLLOMON_JAFFE_056 = set({ C: 0.56, Mn: 0.54, Si: 0.18 }, 63, [
  run(10, [62.5, 62.5, 63.5, 62.5, 61.5, 56, 48.5, 38.5, 31.5]),
  run(90, [63.5, 62.5, 60.5, 57.5, 54.5, 48.5, 40.5, 32.5, 25.5]),
  run(900, [63.5, 61.5, 58.5, 54.5, 52, 45, 36.5, 28.5, 19]),
  run(9000, [61, 61, 56.5, 53.5, 50.5, 42, 34.5, 25, 12.5]),
  run(86400, [60.5, 58.5, 54.5, 50.5, 47.5, 40.5, 31.5, 18.5, 1.5]),
]);
export const HOLLOMON_JAFFE_074 = set({ C: 0.74, Mn: 0.66, Si: 0.18 }, 66.5, [
  run(10, [67, 67.5, 67.5, 67, 65.5, 61.5, 51.5, 42.5, 36.5]),
  run(90, [66.5, 67.5, 65, 61.5, 58.5, 51.5, 44.5, 38.5, 29]),
  run(900, [67.5, 66.5, 62.5, 59.5, 56.5, 49.5, 42.5, 34.5, 22.5]),
  run(9000, [66.5, 64.5, 59.5, 58, 53.5, 47.5, 38.5, 28.5, 16.5]),
  run(86400, [65.5, 61.5, 58.5, 55, 51.5, 44.5, 34.5, 21.5, 7.5]),
]);
export const HOLLOMON_JAFFE_089 = set({ C: 0.89, Mn: 0.55, Si: 0.06 }, 67, [
  run(10, [67, 67.5, 67.5, 67.5, 64.5, 58.5, 48.5, 43, 37.5]),
  run(90, [67.5, 67.5, 65.5, 62.5, 59.5, 52.5, 45.5, 38, 31.5]),
  run(900, [68, 66.5, 64.5, 60.5, 57.5, 50.5, 42.5, 34, 25.5]),
  run(9000, [68.5, 63.5, 61.5, 58.5, 54, 46.5, 38, 28.5, 18]),
  run(86400, [67.5, 62.5, 59.5, 55.5, 52.5, 44.5, 33, 22.5, 12]),
]);
export const HOLLOMON_JAFFE_098 = set({ C: 0.98, Mn: 0.3, Si: 0.3 }, 66.5, [
  run(10, [66.5, 67, 68, 66.5, 65, 60.5, 52.5, 43.5, 35.5], CELSIUS_098),
  run(90, [65.5, 66.5, 66.5, 62.5, 61, 52.5, 44.5, 35.5, 27.5], CELSIUS_098),
  run(900, [67, 65.5, 63.5, 60, 56.5, 49.5, 41.5, 28.5, 22.5], CELSIUS_098),
  run(9000, [67.5, 64.5, 62.5, 57.5, 55.5, 45.5, 35.5, 23.5, 14.5], CELSIUS_098),
  run(86400, [66.5, 63.5, 60.5, 56, 52.5, 43.5, 30.5, 4.5], CELSIUS_098_LAST),
]);
export const HOLLOMON_JAFFE_115 = set({ C: 1.15, Mn: 0.58, Si: 0.09 }, 64.5, [
  run(10, [65, 63.5, 65, 66.5, 64, 57.5, 49, 42.5, 37.5]),
  run(90, [64.5, 65, 64.5, 61.5, 60, 52, 44, 38.5, 32]),
  run(900, [65.5, 66, 62.5, 59.5, 55.5, 49.5, 41, 32.5, 24.5]),
  run(9000, [66.5, 64, 60, 57.5, 53, 46.5, 37.5, 30.5, 18]),
  run(86400, [65, 61, 60.5, 55.5, 50.5, 42, 32, 23, 4.5]),
]);
export const HOLLOMON_JAFFE_031 = set({ C: 0.31, Mn: 0.52, Si: 0.1 }, 46.5, [
  run(9000, [47.5, 47, 46.5, 44, 39.5, 30.5, 19.5, 16, 7]),
]);

export const HOLLOMON_JAFFE_SETS: readonly TemperSet[] = [
  HOLLOMON_JAFFE_056,
  HOLLOMON_JAFFE_074,
  HOLLOMON_JAFFE_089,
  HOLLOMON_JAFFE_098,
  HOLLOMON_JAFFE_115,
  HOLLOMON_JAFFE_031,
];
