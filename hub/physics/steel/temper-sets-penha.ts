/** Penha 2010: tempered hardness of four alloy steels, 2.5 h and partly 1 h at heat. */
import type { Composition } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { TemperRun, TemperSet } from './temper-set.ts';

const FROM: Provenance = {
  standing: 'published-secondary',
  source: 'Penha 2010, via a public compilation of tempering data',
};

const CELSIUS = [100, 150, 200, 250, 300, 400, 500, 600, 700];

function set(
  name: string,
  composition: Composition,
  quenchedHrc: number,
  hrc: readonly number[],
  oneHour: readonly number[] = [],
): TemperSet {
  const runs: TemperRun[] = [{ hours: 2.5, celsius: CELSIUS, hrc }];
  if (oneHour.length > 0) runs.push({ hours: 1, celsius: CELSIUS.slice(3), hrc: oneHour });
  return {
    id: `penha-${name}`,
    title: `${name}, Penha 2010`,
    composition,
    quenchedHrc,
    timeStated: true,
    secondaryHardening: false,
    runs,
    from: FROM,
  };
}

/** Visibly scattered at 300 °C: 50.0 after 1 h, 44.1 after 2.5 h. */
export const PENHA_5160 = set(
  '5160',
  { C: 0.62, Mn: 0.88, Cr: 0.79 },
  61.6,
  [59.1, 58.4, 55.2, 51.9, 44.1, 39.9, 33.8, 23.9, 18.3],
  [52.2, 50, 43.7, 35.3, 27.7, 19.4],
);
export const PENHA_6150 = set(
  '6150',
  { C: 0.51, Mn: 0.81, Cr: 0.98 },
  63.1,
  [62.7, 57.4, 56.5, 51.6, 49.4, 44.1, 38, 31.3, 18.3],
);
export const PENHA_52100 = set(
  '52100',
  { C: 1.02, Mn: 0.4, Cr: 1.42 },
  63.3,
  [62.8, 59.8, 58.4, 56.8, 53.7, 49.9, 40.4, 32.1, 22.3],
  [57.2, 55.2, 50.5, 45.8, 36.8, 24.5],
);
export const PENHA_4140 = set(
  '4140',
  { C: 0.41, Mn: 0.88, Cr: 1.02, Mo: 0.22 },
  58.8,
  [58.5, 52.7, 52.2, 50, 48.1, 43.1, 37.1, 29.9, 19.4],
);

export const PENHA: readonly TemperSet[] = [PENHA_5160, PENHA_6150, PENHA_52100, PENHA_4140];
