import type { NumberWords } from './numbers.ts';

/** English. */
export const NUMBERS: NumberWords = {
  unknown: 'unknown',
  unknownRate: 'an unknown rate',
  unknownTime: 'an unknown time',
  decimalPoint: '.',
};
