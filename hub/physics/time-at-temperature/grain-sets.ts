/**
 * Austenite grain sizes that were measured, mean size in µm.
 *
 * From a public compilation of grain-growth data (D. Sahin, 1039 rows, with a
 * list of original papers). It does not tie rows to papers: the numbers were
 * seen, the authors named here are inferred from composition and are probable.
 */
export interface GrainSet {
  readonly id: string;
  readonly steel: string;
  readonly carbonPercent: number;
  readonly alloy: { readonly ni?: number; readonly cr?: number; readonly mo?: number };
  readonly probableSource: string;
  /** Holding times of the columns, s. */
  readonly seconds: readonly number[];
  readonly rows: readonly { readonly celsius: number; readonly micrometres: readonly number[] }[];
}

const HOUR = 3600;
const KHZOUZ_SECONDS = [0.5 * HOUR, 2 * HOUR, 6 * HOUR, 9 * HOUR];

export const GRAIN_SETS: readonly GrainSet[] = [
  {
    id: 'o1',
    steel: 'O1 (1.03 C, 1.0 Mn, 0.6 Cr, 0.5 W)',
    carbonPercent: 1.03,
    alloy: { cr: 0.6 },
    probableSource: 'Mochtar et al., JMEPEG 32 (2023) 3322',
    seconds: [0.5 * HOUR, HOUR, 2 * HOUR],
    rows: [
      { celsius: 800, micrometres: [7.8, 8.7, 9.9] },
      { celsius: 900, micrometres: [15.6, 15.8, 18.5] },
      { celsius: 1000, micrometres: [64, 81, 94] },
      { celsius: 1100, micrometres: [125, 137, 156] },
    ],
  },
  {
    id: '1045',
    steel: '1045 to 1050 type (0.48 C, 0.70 Mn)',
    carbonPercent: 0.48,
    alloy: {},
    probableSource: 'Khzouz, WPI 2011',
    seconds: KHZOUZ_SECONDS,
    rows: [
      { celsius: 850, micrometres: [10.3, 10.9, 12, 12.3] },
      { celsius: 900, micrometres: [11.9, 13.1, 13.8, 16.1] },
      { celsius: 950, micrometres: [15.2, 15.8, 16.5, 19.2] },
      { celsius: 1000, micrometres: [32, 36.7, 42, 45.6] },
      { celsius: 1050, micrometres: [41, 45.7, 57.7, 60] },
    ],
  },
  {
    id: '52100',
    steel: '52100 type (0.975 C, 1.57 Cr)',
    carbonPercent: 0.975,
    alloy: { cr: 1.57 },
    probableSource: 'Khzouz, WPI 2011',
    seconds: KHZOUZ_SECONDS,
    rows: [
      { celsius: 900, micrometres: [13.1, 13.4, 14.8, 15] },
      { celsius: 950, micrometres: [12.8, 14.2, 14.7, 15.8] },
      { celsius: 1000, micrometres: [22.5, 23.2, 24.4, 26.6] },
      { celsius: 1050, micrometres: [25.8, 30.2, 37.1, 39.2] },
    ],
  },
  {
    id: '4340',
    steel: '4340 type',
    carbonPercent: 0.4,
    alloy: { ni: 1.83, cr: 0.8, mo: 0.25 },
    probableSource: 'Khzouz, WPI 2011',
    seconds: KHZOUZ_SECONDS,
    rows: [
      { celsius: 850, micrometres: [10.8, 10.9, 11.1, 11.5] },
      { celsius: 950, micrometres: [13.8, 14.2, 14.7, 15.8] },
      { celsius: 1050, micrometres: [31, 34.8, 35.7, 37.5] },
    ],
  },
  {
    id: '4140',
    steel: '4140',
    carbonPercent: 0.4,
    alloy: { cr: 0.95, mo: 0.2 },
    probableSource: 'Wang et al. 2013',
    seconds: [120, 240, 360, 480],
    rows: [
      { celsius: 800, micrometres: [14.1, 16.1, 18.1, 19.8] },
      { celsius: 900, micrometres: [29.3, 33.7, 36.7, 38.9] },
      { celsius: 1000, micrometres: [56, 63.7, 68.6, 73.2] },
      { celsius: 1100, micrometres: [108, 119, 128, 136] },
    ],
  },
];
