/**
 * ITS-90 thermocouple inverse polynomials: coefficients and stated error bands.
 *
 * Source: NIST Standard Reference Database 60. Standing: published. °C as a
 * polynomial in mV, approximate; here only a check on the solved inverse, because
 * the polynomials jump by up to 0.07 °C at their joins.
 * The error bands are inverse minus direct. NIST prints them to 0.01 °C; the
 * finer `foundCelsius` band is computed from these same coefficients.
 */

import type { ThermocoupleType } from '../../hub/physics/thermocouple-direct-table.ts';

/** One sub-range of an inverse polynomial: t = Σ coefficients[i]·mV^i. */
export interface InversePiece {
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly lowMillivolts: number;
  readonly highMillivolts: number;
  /** Band stated by NIST, °C. */
  readonly statedCelsius: readonly [number, number];
  /** Band found with 20 001 points over the sub-range, °C (computed). */
  readonly foundCelsius: readonly [number, number];
  readonly coefficients: readonly number[];
}

/** The inverse polynomials by type, lowest sub-range first. */
export const inversePieces: Readonly<Record<ThermocoupleType, readonly InversePiece[]>> = {
  B: [
    {
      lowCelsius: 250,
      highCelsius: 700,
      lowMillivolts: 0.291,
      highMillivolts: 2.431,
      statedCelsius: [-0.02, 0.03],
      foundCelsius: [-0.0205, 0.0262],
      coefficients: [
        98.423321, 699.715, -847.65304, 1005.2644, -833.45952, 455.08542, -155.23037, 29.88675, -2.474286,
      ],
    },
    {
      lowCelsius: 700,
      highCelsius: 1820,
      lowMillivolts: 2.431,
      highMillivolts: 13.82,
      statedCelsius: [-0.01, 0.02],
      foundCelsius: [-0.0115, 0.0123],
      coefficients: [
        213.15071, 285.10504, -52.742887, 9.9160804, -1.2965303, 0.1119587, -0.0060625199, 0.00018661696,
        -2.4878585e-6,
      ],
    },
  ],
  E: [
    {
      lowCelsius: -200,
      highCelsius: 0,
      lowMillivolts: -8.825,
      highMillivolts: 0,
      statedCelsius: [-0.01, 0.03],
      foundCelsius: [-0.0099, 0.0217],
      coefficients: [
        0, 16.977288, -0.4351497, -0.15859697, -0.092502871, -0.026084314, -0.0041360199, -0.0003403403,
        -1.156489e-5,
      ],
    },
    {
      lowCelsius: 0,
      highCelsius: 1000,
      lowMillivolts: 0,
      highMillivolts: 76.373,
      statedCelsius: [-0.02, 0.02],
      foundCelsius: [-0.0122, 0.0155],
      coefficients: [
        0, 17.057035, -0.23301759, 0.0065435585, -7.3562749e-5, -1.7896001e-6, 8.4036165e-8, -1.3735879e-9,
        1.0629823e-11, -3.2447087e-14,
      ],
    },
  ],
  J: [
    {
      lowCelsius: -210,
      highCelsius: 0,
      lowMillivolts: -8.095,
      highMillivolts: 0,
      statedCelsius: [-0.05, 0.03],
      foundCelsius: [-0.0488, 0.0332],
      coefficients: [
        0, 19.528268, -1.2286185, -1.0752178, -0.59086933, -0.17256713, -0.028131513, -0.002396337,
        -8.3823321e-5,
      ],
    },
    {
      lowCelsius: 0,
      highCelsius: 760,
      lowMillivolts: 0,
      highMillivolts: 42.919,
      statedCelsius: [-0.04, 0.04],
      foundCelsius: [-0.0354, 0.0375],
      coefficients: [
        0, 19.78425, -0.2001204, 0.01036969, -0.0002549687, 3.585153e-6, -5.344285e-8, 5.09989e-10,
      ],
    },
    {
      lowCelsius: 760,
      highCelsius: 1200,
      lowMillivolts: 42.919,
      highMillivolts: 69.553,
      statedCelsius: [-0.04, 0.03],
      foundCelsius: [-0.0366, 0.0246],
      coefficients: [-3113.58187, 300.543684, -9.9477323, 0.17027663, -0.00143033468, 4.73886084e-6],
    },
  ],
  K: [
    {
      lowCelsius: -200,
      highCelsius: 0,
      lowMillivolts: -5.891,
      highMillivolts: 0,
      statedCelsius: [-0.02, 0.04],
      foundCelsius: [-0.0185, 0.0408],
      coefficients: [
        0, 25.173462, -1.1662878, -1.0833638, -0.8977354, -0.37342377, -0.086632643, -0.010450598,
        -0.00051920577,
      ],
    },
    {
      lowCelsius: 0,
      highCelsius: 500,
      lowMillivolts: 0,
      highMillivolts: 20.644,
      statedCelsius: [-0.05, 0.04],
      foundCelsius: [-0.0467, 0.0339],
      coefficients: [
        0, 25.08355, 0.07860106, -0.2503131, 0.0831527, -0.01228034, 0.0009804036, -4.41303e-5, 1.057734e-6,
        -1.052755e-8,
      ],
    },
    {
      lowCelsius: 500,
      highCelsius: 1372,
      lowMillivolts: 20.644,
      highMillivolts: 54.886,
      statedCelsius: [-0.05, 0.06],
      foundCelsius: [-0.0459, 0.0535],
      coefficients: [-131.8058, 48.30222, -1.646031, 0.05464731, -0.0009650715, 8.802193e-6, -3.11081e-8],
    },
  ],
  N: [
    {
      lowCelsius: -200,
      highCelsius: 0,
      lowMillivolts: -3.99,
      highMillivolts: 0,
      statedCelsius: [-0.02, 0.03],
      foundCelsius: [-0.0128, 0.0265],
      coefficients: [
        0, 38.436847, 1.1010485, 5.2229312, 7.2060525, 5.8488586, 2.7754916, 0.77075166, 0.11582665,
        0.0073138868,
      ],
    },
    {
      lowCelsius: 0,
      highCelsius: 600,
      lowMillivolts: 0,
      highMillivolts: 20.613,
      statedCelsius: [-0.02, 0.03],
      foundCelsius: [-0.0158, 0.0274],
      coefficients: [0, 38.6896, -1.08267, 0.0470205, -2.12169e-6, -0.000117272, 5.3928e-6, -7.98156e-8],
    },
    {
      lowCelsius: 600,
      highCelsius: 1300,
      lowMillivolts: 20.613,
      highMillivolts: 47.513,
      statedCelsius: [-0.04, 0.02],
      foundCelsius: [-0.0387, 0.0211],
      coefficients: [19.72485, 33.00943, -0.3915159, 0.009855391, -0.0001274371, 7.767022e-7],
    },
  ],
  R: [
    {
      lowCelsius: -50,
      highCelsius: 250,
      lowMillivolts: -0.226,
      highMillivolts: 1.923,
      statedCelsius: [-0.02, 0.02],
      foundCelsius: [-0.0108, 0.0186],
      coefficients: [
        0, 188.9138, -93.83529, 130.68619, -227.0358, 351.45659, -389.539, 282.39471, -126.07281, 31.353611,
        -3.3187769,
      ],
    },
    {
      lowCelsius: 250,
      highCelsius: 1200,
      lowMillivolts: 1.923,
      highMillivolts: 13.228,
      statedCelsius: [-0.005, 0.005],
      foundCelsius: [-0.0042, 0.0049],
      coefficients: [
        13.34584505, 147.2644573, -18.44024844, 4.031129726, -0.624942836, 0.06468412046, -0.004458750426,
        0.0001994710149, -5.31340179e-6, 6.481976217e-8,
      ],
    },
    {
      lowCelsius: 1064,
      highCelsius: 1664.5,
      lowMillivolts: 11.361,
      highMillivolts: 19.739,
      statedCelsius: [-0.0005, 0.001],
      foundCelsius: [-0.0005, 0.0007],
      coefficients: [-81.99599416, 155.3962042, -8.342197663, 0.4279433549, -0.0119157791, 0.0001492290091],
    },
    {
      lowCelsius: 1664.5,
      highCelsius: 1768.1,
      lowMillivolts: 19.739,
      highMillivolts: 21.103,
      statedCelsius: [-0.001, 0.002],
      foundCelsius: [-0.001, 0.001],
      coefficients: [34061.77836, -7023.729171, 558.2903813, -19.52394635, 0.2560740231],
    },
  ],
  S: [
    {
      lowCelsius: -50,
      highCelsius: 250,
      lowMillivolts: -0.235,
      highMillivolts: 1.874,
      statedCelsius: [-0.02, 0.02],
      foundCelsius: [-0.011, 0.0199],
      coefficients: [
        0, 184.94946, -80.0504062, 102.23743, -152.248592, 188.821343, -159.085941, 82.302788, -23.4181944,
        2.7978626,
      ],
    },
    {
      lowCelsius: 250,
      highCelsius: 1200,
      lowMillivolts: 1.874,
      highMillivolts: 11.95,
      statedCelsius: [-0.01, 0.01],
      foundCelsius: [-0.0091, 0.0098],
      coefficients: [
        12.91507177, 146.6298863, -15.34713402, 3.145945973, -0.4163257839, 0.03187963771, -0.0012916375,
        2.183475087e-5, -1.447379511e-7, 8.211272125e-9,
      ],
    },
    {
      lowCelsius: 1064,
      highCelsius: 1664.5,
      lowMillivolts: 10.332,
      highMillivolts: 17.536,
      statedCelsius: [-0.0002, 0.0002],
      foundCelsius: [-0.0002, 0.0001],
      coefficients: [-80.87801117, 162.1573104, -8.536869453, 0.4719686976, -0.01441693666, 0.000208161889],
    },
    {
      lowCelsius: 1664.5,
      highCelsius: 1768.1,
      lowMillivolts: 17.536,
      highMillivolts: 18.693,
      statedCelsius: [-0.002, 0.002],
      foundCelsius: [-0.0016, 0.0012],
      coefficients: [53338.75126, -12358.92298, 1092.657613, -42.65693686, 0.624720542],
    },
  ],
  T: [
    {
      lowCelsius: -200,
      highCelsius: 0,
      lowMillivolts: -5.603,
      highMillivolts: 0,
      statedCelsius: [-0.02, 0.04],
      foundCelsius: [-0.0173, 0.0384],
      coefficients: [
        0, 25.949192, -0.21316967, 0.79018692, 0.42527777, 0.13304473, 0.020241446, 0.0012668171,
      ],
    },
    {
      lowCelsius: 0,
      highCelsius: 400,
      lowMillivolts: 0,
      highMillivolts: 20.872,
      statedCelsius: [-0.03, 0.03],
      foundCelsius: [-0.0254, 0.0251],
      coefficients: [0, 25.928, -0.7602961, 0.04637791, -0.002165394, 6.048144e-5, -7.293422e-7],
    },
  ],
};
