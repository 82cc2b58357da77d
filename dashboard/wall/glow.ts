/**
 * The colour steel has at a heat. Names and limits: Chapman, Workshop Technology part 1 (5th ed. 1972), from a
 * secondary print; screen colours are our own suggestion. Authors differ by 60 °C and more, so this is trade
 * information beside the number, and never judged. It is kept duller and browner than the alarm hues.
 */
export interface Glow {
  readonly name: string;
  /** CSS colour; null while steel does not glow. */
  readonly colour: string | null;
}

const GLOWS: readonly (readonly [fromCelsius: number, name: string, colour: string | null])[] = [
  [Number.NEGATIVE_INFINITY, 'no glow', null],
  [426, 'black red', '#3a1a14'],
  [594, 'very dark red', '#571a10'],
  [705, 'dark red', '#7a2410'],
  [815, 'cherry red', '#94421f'],
  [871, 'light cherry', '#b9501d'],
  [982, 'orange', '#d97b2a'],
  [1093, 'yellow', '#efae55'],
  [1259, 'yellow-white', '#f8d9a0'],
  [1315, 'white', '#fdf3e0'],
];

/** Name and colour of steel at a surface temperature in °C; any finite temperature is answered. */
export function glowAt(celsius: number): Glow {
  const [, name, colour] = GLOWS.findLast(([from]) => celsius >= from) ?? [0, 'no glow', null];
  return { name, colour };
}
