import type { TemperedPoint, TemperingLearned } from '../contract/batch-statistics.ts';
import { PhysicsError } from '../physics/errors.ts';
import {
  expectedHardness,
  fitHardnessCurve,
  type HardnessCurve,
} from '../physics/statistics/hardness-curve.ts';
import { hollomonJaffe } from '../physics/steel/hollomon-jaffe.ts';

/** Hardness against tempering parameter, so that a shop learns its own steel. */

/** One hold of a temper: mean of the coldest channel, and the soak clock. */
export interface TemperHold {
  readonly celsius: number;
  readonly seconds: number;
}

const KELVIN = 273.15;
/** Entries of the drawn curve. */
const POINTS = 41;

/**
 * Parameter of several holds in a row: each carries over the hours that would have done the same at its own
 * temperature (Scheil), as `equivalentTemper` does reading by reading. Heat-up and cool-down are left out.
 *
 * @param constant Hollomon-Jaffe C for hours
 * @returns kelvin; null without a hold of any length
 * @throws PhysicsError `out-of-range` for a hold outside -50 to 750 °C
 */
export function parameterOfHolds(holds: readonly TemperHold[], constant: number): number | null {
  return holds
    .filter(({ seconds }) => seconds > 0)
    .reduce<number | null>((parameter, { celsius, seconds }) => {
      const kelvin = celsius + KELVIN;
      const before = parameter === null ? 0 : 10 ** (parameter / kelvin - constant);
      return hollomonJaffe(celsius, before + seconds / 3600, constant);
    }, null);
}

/** Temperature at which one hour gives a parameter, °C: log10 of one hour is 0, so that P = T C. */
export function celsiusForOneHour(parameter: number, constant: number): number {
  return parameter / constant - KELVIN;
}

/** The line through the pieces with the band of single pieces, drawn over what was measured; or why there is none. */
export function learn(
  points: readonly TemperedPoint[],
  constant: number,
): Pick<TemperingLearned, 'curve' | 'hold' | 'notFitted'> {
  const curve = fitted(points);
  if (typeof curve === 'string') return { curve: [], hold: [], notFitted: curve };
  const step = (curve.to - curve.from) / (POINTS - 1);
  const parameters = Array.from({ length: POINTS }, (_, i) => curve.from + i * step);
  return {
    curve: parameters.map((parameter) => {
      const { hardnessHrc, low, high } = expectedHardness(curve, parameter);
      return { parameter, hardnessHrc, low, high };
    }),
    hold: [curve.from, curve.to].map((parameter) => ({
      parameter,
      celsiusForOneHour: celsiusForOneHour(parameter, constant),
    })),
    notFitted: null,
  };
}

function fitted(points: readonly TemperedPoint[]): HardnessCurve | 'few-pieces' | 'tempered-alike' {
  try {
    return fitHardnessCurve(points);
  } catch (fault) {
    if (!(fault instanceof PhysicsError)) throw fault;
    if (fault.code === 'bad-input') return 'few-pieces';
    if (fault.code === 'no-solution') return 'tempered-alike';
    throw fault;
  }
}
