import type { NumberWords } from './numbers.ts';

/** German. */
export const NUMBERS: NumberWords = {
  unknown: 'unbekannt',
  unknownRate: 'unbekannter Rate',
  unknownTime: 'unbekannte Zeit',
  decimalPoint: ',',
};
