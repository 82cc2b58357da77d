import {
  StraightLineAnswer,
  StraightLineQuestion,
  ThermocoupleAnswer,
  ThermocoupleQuestion,
  type ThermocoupleType,
  ToleranceClass,
} from '../../../contract/compute/thermocouple.ts';
import { showTo, showValue } from '../../../contract/significant.ts';
import { PhysicsError } from '../../../physics/errors.ts';
import { emfMillivolts, emfSlopeMillivoltsPerCelsius, functionRange } from '../../../physics/thermocouple.ts';
import {
  hotJunctionCelsius,
  straightLineSlopes,
  undoStraightLine,
} from '../../../physics/thermocouple-junction.ts';
import { toleranceBand } from '../../../physics/thermocouple-tolerance.ts';
import { orReason } from './answers.ts';
import { computation } from './computation.ts';

export const thermocouple = computation({
  name: 'thermocouple',
  summary: 'Emf of a thermocouple from its temperature, or temperature from its emf (ITS-90)',
  question: ThermocoupleQuestion,
  answer: ThermocoupleAnswer,
  run: (question) => {
    const { type, coldJunctionCelsius } = question;
    const celsius =
      question.celsius ??
      hotJunctionCelsius({ type, millivolts: question.millivolts ?? Number.NaN, coldJunctionCelsius });
    const millivolts =
      question.millivolts ?? emfMillivolts(type, celsius) - emfMillivolts(type, coldJunctionCelsius);
    const tolerances = ToleranceClass.options.flatMap((one) => band(type, one, celsius) ?? []);
    const tolerance = band(type, question.class, celsius);
    return {
      type,
      celsius,
      millivolts,
      coldJunctionCelsius,
      sensitivityMicrovoltsPerCelsius: 1000 * emfSlopeMillivoltsPerCelsius(type, celsius),
      tolerance,
      tolerances,
      range: functionRange(type),
      shown: {
        // Without a tolerance a tenth is what a table and a digitiser are good for.
        celsius: tolerance ? showValue(celsius, tolerance.halfWidthCelsius, '°C') : showTo(celsius, -1, '°C'),
        // The printed tables end at a microvolt.
        millivolts: showTo(millivolts, -3, 'mV'),
      },
      source: 'NIST Standard Reference Database 60 (ITS-90), as IEC 60584-1',
    };
  },
});

/** The band of a class at a temperature, null where it does not exist or does not reach. */
function band(type: ThermocoupleType, toleranceClass: ToleranceClass, celsius: number) {
  const found = orReason(() => toleranceBand(type, toleranceClass, celsius));
  return found.value === null ? null : { class: toleranceClass, ...found.value };
}

export const straightLine = computation({
  name: 'thermocouple-straight-line',
  summary: 'Undo the straight line that simple digitisers assume',
  question: StraightLineQuestion,
  answer: StraightLineAnswer,
  run: (question) => {
    const slopeMillivoltsPerCelsius = question.slopeMillivoltsPerCelsius ?? usualSlope(question.type);
    const celsius = undoStraightLine({ ...question, slopeMillivoltsPerCelsius });
    const errorCelsius = question.reportedCelsius - celsius;
    return { celsius, errorCelsius, slopeMillivoltsPerCelsius, shown: showTo(celsius, -1, '°C') };
  },
});

function usualSlope(type: ThermocoupleType): number {
  const slope = straightLineSlopes[type];
  if (slope !== undefined) return slope;
  throw new PhysicsError(
    'not-applicable',
    `no digitiser of one slope is known for type ${type}: give its slope`,
  );
}
