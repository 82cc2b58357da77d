/** Grange & Baughman 1956: tempered hardness of eight steels, 1 h at heat unless said. */
import type { Composition } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { TemperRun, TemperSet } from './temper-set.ts';

const FROM: Provenance = {
  standing: 'published-secondary',
  source: 'Grange & Baughman, Trans. ASM 48 (1956) 165-197, via a public compilation of tempering data',
};

const CELSIUS = [204.4, 260, 315.6, 371.1, 426.7, 482.2, 537.8, 593.3, 648.9, 704.4];
const FEW_CELSIUS = [204.4, 315.6, 426.7, 537.8];

function set(
  name: string,
  composition: Composition,
  hrc: readonly number[],
  more: readonly TemperRun[] = [],
): TemperSet {
  return {
    id: `grange-baughman-${name}`,
    title: `${name}, Grange & Baughman 1956`,
    composition,
    quenchedHrc: null,
    timeStated: true,
    secondaryHardening: false,
    runs: [{ hours: 1, celsius: CELSIUS.slice(0, hrc.length), hrc }, ...more],
    from: FROM,
  };
}

export const GRANGE_BAUGHMAN_1045 = set(
  '1045',
  { C: 0.45, Mn: 0.73, Si: 0.17 },
  [56.3, 53.2, 50.2, 45.9, 40.7, 35.6, 30.4, 25.3, 20.3, 14.2],
);
export const GRANGE_BAUGHMAN_1065 = set(
  '1065',
  { C: 0.63, Mn: 0.87, Si: 0.17 },
  [58.3, 55.9, 52.4, 49.5, 44.8, 39.7, 34.5, 29.7, 23.4, 16.7],
);
export const GRANGE_BAUGHMAN_1080 = set(
  '1080',
  { C: 0.82, Mn: 0.75, Si: 0.3 },
  [61.3, 59.5, 56.7, 51, 47, 43.2, 38.8, 32.5, 27],
  [
    { hours: 1 / 6, celsius: FEW_CELSIUS, hrc: [62.7, 57.6, 50, 42] },
    { hours: 24, celsius: FEW_CELSIUS, hrc: [60, 53.5, 43.8, 32] },
  ],
);
export const GRANGE_BAUGHMAN_4140 = set(
  '4140',
  { C: 0.37, Mn: 0.77, Cr: 0.98, Mo: 0.21 },
  [54.4, 51.1, 48.7, 48, 45, 41.1, 38.2, 35.4, 31.2],
);
export const GRANGE_BAUGHMAN_5140 = set(
  '5140',
  { C: 0.42, Mn: 0.68, Cr: 0.93 },
  [55.1, 51.8, 49.6, 48.3, 44.1, 39.5, 35.1, 31.4, 27.7],
);
export const GRANGE_BAUGHMAN_6145 = set(
  '6145',
  { C: 0.43, Mn: 0.74, Cr: 0.92, V: 0.16 },
  [54.9, 51.9, 50.2, 48.5, 45.2, 41.1, 38.2, 36.2, 30.3],
);
export const GRANGE_BAUGHMAN_9264 = set(
  '9264',
  { C: 0.55, Mn: 0.78, Si: 1.62, Cr: 0.77 },
  [59.9, 58.9, 58.3, 56.7, 51.9, 47, 42.1, 38.8, 34.2, 29],
);
export const GRANGE_BAUGHMAN_4068 = set(
  '4068',
  { C: 0.68, Mn: 0.87, Mo: 0.24 },
  [59.5, 57, 53.5, 50.5, 47, 43.5, 39.5, 35.2, 29.5, 21.2],
);

export const GRANGE_BAUGHMAN: readonly TemperSet[] = [
  GRANGE_BAUGHMAN_1045,
  GRANGE_BAUGHMAN_1065,
  GRANGE_BAUGHMAN_1080,
  GRANGE_BAUGHMAN_4140,
  GRANGE_BAUGHMAN_5140,
  GRANGE_BAUGHMAN_6145,
  GRANGE_BAUGHMAN_9264,
  GRANGE_BAUGHMAN_4068,
];
