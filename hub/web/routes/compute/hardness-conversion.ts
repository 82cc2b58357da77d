import {
  HardnessConversionAnswer,
  HardnessConversionQuestion,
  type HardnessScale,
} from '../../../contract/compute/hardness-conversion.ts';
import { showTo } from '../../../contract/significant.ts';
import { PhysicsError } from '../../../physics/errors.ts';
import { hrcToHv, hvToHrc } from '../../../physics/steel/hardness-scale.ts';
import { computation } from './computation.ts';

export const hardnessConversion = computation({
  name: 'hardness-conversion',
  summary: 'Rockwell C to Vickers and back, inside ASTM E140 table 1 only',
  question: HardnessConversionQuestion,
  answer: HardnessConversionAnswer,
  run: ({ value: given, from }) => {
    const to: HardnessScale = from === 'HRC' ? 'HV' : 'HRC';
    const reading = from === 'HRC' ? hrcToHv(given) : hvToHrc(given);
    if (reading.outcome !== 'converted') {
      const message = `${given} ${from} lies ${reading.outcome === 'below-scale' ? 'below' : 'above'} ASTM E140 table 1, which reaches from 20 HRC (238 HV) to 68 HRC (940 HV): there is no number`;
      throw new PhysicsError('out-of-range', message, { given, from });
    }
    const { value } = reading;
    // A Rockwell reading is good to a point, and a point is about 10 HV and more.
    const shown = showTo(value, 0, to);
    return { value, from, to, given, provenance: reading.from, shown };
  },
});
