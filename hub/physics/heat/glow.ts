/**
 * The colour steel has at a heat, as smiths read it.
 *
 * Names and limits: Chapman, Workshop Technology part 1 (5th ed. 1972), as an
 * encyclopaedia page prints them (cherry 815-870 and light cherry 871-981 included).
 * Just visible in a dark room from 400 °C (visibility list, secondary).
 *
 * Authors disagree widely: "cherry" means 635 to 900 °C depending on whom one
 * reads. A colour is worth 60 °C either way at best, less in bright light.
 */
import { requireRange } from '../errors.ts';

export interface Glow {
  readonly name: string;
  /** Range of this name, °C. */
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** A suggestion of ours for a screen, no measurement: red, green, blue, 0 to 255. */
  readonly rgb: readonly [number, number, number];
  /** How far a colour read by eye may be off, K. */
  readonly uncertaintyCelsius: number;
}

/** What a colour read by eye is worth at best, K. */
export const GLOW_UNCERTAINTY_CELSIUS = 60;
const COLDEST = -40;
const HOTTEST = 1600;

const NAMES: readonly (readonly [from: number, name: string, rgb: readonly [number, number, number]])[] = [
  [COLDEST, 'no glow', [40, 40, 44]],
  [426, 'black red', [62, 22, 18]],
  [594, 'very dark red', [98, 18, 10]],
  [705, 'dark red', [146, 24, 8]],
  [815, 'cherry red', [196, 38, 10]],
  [871, 'light cherry', [226, 66, 16]],
  [982, 'orange', [246, 118, 26]],
  [1093, 'yellow', [255, 186, 62]],
  [1259, 'yellow-white', [255, 224, 150]],
  [1315, 'white', [255, 246, 224]],
];

/**
 * Name and colour of steel at a temperature.
 *
 * @param celsius surface temperature, -40 to 1600 °C
 * @throws PhysicsError `out-of-range` outside -40 to 1600 °C
 */
export function glowAt(celsius: number): Glow {
  requireRange('steel temperature', celsius, COLDEST, HOTTEST, '°C');
  const index = NAMES.findLastIndex(([from]) => celsius >= from);
  const [lowCelsius, name, rgb] = NAMES[index] ?? [COLDEST, 'no glow', [40, 40, 44]];
  const highCelsius = NAMES[index + 1]?.[0] ?? HOTTEST;
  return { name, lowCelsius, highCelsius, rgb, uncertaintyCelsius: GLOW_UNCERTAINTY_CELSIUS };
}

/** All names in rising order, for a legend. */
export function glowScale(): Glow[] {
  return NAMES.map(([from]) => glowAt(from));
}
