import type { DisplayUnit } from '../schedule.ts';
import { difference, elapsed, rate, temperature } from './format.ts';

/** What a language says where a number is missing, and how it parts decimals. */
export interface NumberWords {
  readonly unknown: string;
  readonly unknownRate: string;
  readonly unknownTime: string;
  readonly decimalPoint: string;
}

/** Numbers as the people of one language read them; see `format.ts` for each. */
export interface Numbers {
  temperature(celsius: number | null, unit: DisplayUnit): string;
  difference(celsius: number | null, unit: DisplayUnit): string;
  rate(celsiusPerHour: number | null, unit: DisplayUnit): string;
  elapsed(seconds: number | null): string;
}

/** The numbers of a language. */
export function numbersIn(say: NumberWords): Numbers {
  const point = (text: string) => text.replace('.', say.decimalPoint);
  return {
    temperature: (celsius, unit) => (celsius === null ? say.unknown : point(temperature(celsius, unit))),
    difference: (celsius, unit) => (celsius === null ? say.unknown : point(difference(celsius, unit))),
    rate: (perHour, unit) => (perHour === null ? say.unknownRate : point(rate(perHour, unit))),
    elapsed: (seconds) => (seconds === null ? say.unknownTime : elapsed(seconds)),
  };
}
