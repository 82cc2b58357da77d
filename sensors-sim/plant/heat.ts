/** Heat exchange shared by the furnaces. All flows in W, positive from the first body to the second. */

const STEFAN_BOLTZMANN = 5.670374419e-8;
const KELVIN_OFFSET = 273.15;

/** Net radiation of a surface against surroundings, W: emissivity, m², °C, °C. */
export function radiatedWatts(emissivity: number, squareMetres: number, from: number, to: number): number {
  const fourth = (from + KELVIN_OFFSET) ** 4 - (to + KELVIN_OFFSET) ** 4;
  return emissivity * STEFAN_BOLTZMANN * squareMetres * fourth;
}

/** W/K that carries the same small heat as radiation would between two near temperatures, °C. */
export function radiativeConductance(
  emissivity: number,
  squareMetres: number,
  one: number,
  two: number,
): number {
  const mean = (one + two) / 2 + KELVIN_OFFSET;
  return 4 * emissivity * STEFAN_BOLTZMANN * squareMetres * mean ** 3;
}
