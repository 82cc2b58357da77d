import { ArrestsAnswer, ArrestsQuestion } from '../../../contract/compute/arrests.ts';
import { showBand } from '../../../contract/significant.ts';
import { type Arrest, findArrests } from '../../../physics/time-at-temperature/arrests.ts';
import { defined } from '../need.ts';
import { requireModestCurve } from './bounds.ts';
import { computation } from './computation.ts';

export const arrests = computation({
  name: 'arrests',
  summary: 'Decalescence and recalescence in the record of a thermocouple that touches the piece',
  question: ArrestsQuestion,
  answer: ArrestsAnswer,
  run: ({ record, disturbances }) => {
    const points = requireModestCurve(record).map(({ atMs, celsius, chamberCelsius }) => ({
      atMs,
      celsius,
      ...defined({ chamberCelsius }),
    }));
    const found = findArrests({ record: points, disturbances });
    return { arrests: found.arrests.map(shown), rejected: found.rejected.map(shown) };
  },
});

function shown<Found extends Arrest>(arrest: Found): Found & { shown: string } {
  const { lowCelsius: low, celsius: value, highCelsius: high } = arrest;
  return { ...arrest, shown: showBand({ low, value, high }, '°C') };
}
