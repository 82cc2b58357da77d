import { glowAt } from '../wall/glow.ts';

/** The colours of the cut, each with the temperature it begins at, read off the wall's own scale. */
export interface Glowing {
  readonly name: string;
  readonly colour: string;
  readonly fromCelsius: number;
}

const HOTTEST = 1350;

export const GLOWS: readonly Glowing[] = steps();

function steps(): Glowing[] {
  const found: Glowing[] = [];
  for (let celsius = 0; celsius <= HOTTEST; celsius += 1) {
    const { name, colour } = glowAt(celsius);
    if (colour !== null && found.at(-1)?.name !== name) found.push({ name, colour, fromCelsius: celsius });
  }
  return found;
}
