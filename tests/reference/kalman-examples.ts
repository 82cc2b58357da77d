/** Worked examples of the Kalman filter. */

/**
 * Height of a building: constant state, altimeter of 5 m standard deviation, first guess 60 m ± 15 m.
 * SOURCE: A. Becker, Kalman Filter Tutorial (kalmanfilter.net), "Estimating the height of a building"; the
 * measurements seen in a secondary copy, the results from memory, two decimals.
 */
export const BUILDING = {
  first: { mean: 60, variance: 225 },
  measurementVariance: 25,
  measurements: [48.54, 47.11, 55.01, 55.15, 49.89, 40.85, 46.72, 50.05, 51.27, 49.95],
  estimates: [49.69, 48.47, 50.57, 51.68, 51.33, 49.62, 49.21, 49.31, 49.53, 49.57],
  variances: [22.5, 11.84, 8.04, 6.08, 4.89, 4.09, 3.52, 3.08, 2.74, 2.47],
} as const;

/**
 * Flow of the Nile at Aswan 1871 to 1970, 1e8 m³ a year, and the local level model fitted to it.
 * SOURCE: data as distributed with R (from memory); variances 15098.6 and 1469.1 as R's StructTS prints them, and the
 * log likelihood -632.5456 with a diffuse start as R's KFAS prints it (secondary copies of both); J. Durbin and S. J.
 * Koopman, Time Series Analysis by State Space Methods, 2001.
 */
export const NILE = {
  measurementVariance: 15098.6,
  levelVariance: 1469.1,
  logLikelihood: -632.5456,
  flows: [
    1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958,
    1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020,
    1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796,
    1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874,
    848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718,
    714, 740,
  ],
} as const;

/**
 * Steady gains of a track whose acceleration is white noise from step to step: position gain and velocity gain times
 * the step, from the tracking index (motion noise · step² / measurement noise).
 * SOURCE: P. R. Kalata, IEEE Trans. Aerospace and Electronic Systems 20(2), 1984 (from memory).
 */
export function kalataGains(index: number): { readonly alpha: number; readonly beta: number } {
  const r = (4 + index - Math.sqrt(8 * index + index * index)) / 4;
  return { alpha: 1 - r * r, beta: 2 * (2 - (1 - r * r)) - 4 * r };
}
