/**
 * Emf at fixed points of the temperature scale, 0.001 mV.
 *
 * Temperatures: ITS-90 Table 1 (published), but the water boiling point 99.974 °C
 * is from memory: ITS-90 supplementary information. Emf: computed apart from
 * this program from the coefficients of NIST SRD 60.
 */

/** °C with mV for types K, N, J, R, S, B. */
export const its90FixedPoints: readonly {
  readonly name: string;
  readonly celsius: number;
  readonly millivolts: Readonly<Record<'K' | 'N' | 'J' | 'R' | 'S' | 'B', number>>;
}[] = [
  { name: 'ice', celsius: 0, millivolts: { K: 0, N: 0, J: 0, R: 0, S: 0, B: 0 } },
  {
    name: 'water boiling',
    celsius: 99.974,
    millivolts: { K: 4.095, N: 2.773, J: 5.268, R: 0.647, S: 0.646, B: 0.033 },
  },
  {
    name: 'tin',
    celsius: 231.928,
    millivolts: { K: 9.421, N: 6.981, J: 12.552, R: 1.756, S: 1.715, B: 0.247 },
  },
  {
    name: 'zinc',
    celsius: 419.527,
    millivolts: { K: 17.223, N: 13.701, J: 22.925, R: 3.611, S: 3.447, B: 0.868 },
  },
  {
    name: 'aluminium',
    celsius: 660.323,
    millivolts: { K: 27.461, N: 22.97, J: 36.695, R: 6.277, S: 5.86, B: 2.167 },
  },
  {
    name: 'silver',
    celsius: 961.78,
    millivolts: { K: 39.778, N: 34.776, J: 55.669, R: 10.003, S: 9.148, B: 4.491 },
  },
  {
    name: 'gold',
    celsius: 1064.18,
    millivolts: { K: 43.755, N: 38.722, J: 61.716, R: 11.364, S: 10.334, B: 5.434 },
  },
  {
    name: 'copper',
    celsius: 1084.62,
    millivolts: { K: 44.535, N: 39.502, J: 62.902, R: 11.64, S: 10.575, B: 5.63 },
  },
];
