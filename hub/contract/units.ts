/**
 * Units at the edge, base units inside.
 *
 * Base units: °C (temperature), Pa gauge (pressure), ppm (carbon monoxide and dioxide), % by volume (oxygen),
 * % (relative humidity), kg (mass), V (thermocouple emf).
 * Codes are UCUM 2.2 or SenML (RFC 8428 section 12.1); each also answers to the spellings that people type.
 */

export const QUANTITIES = [
  'temperature',
  'pressure',
  'carbon-monoxide',
  'mass',
  'emf',
  'carbon-dioxide',
  'oxygen',
  'relative-humidity',
] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** A unit of one quantity. `base = value * scale + offset`. */
export interface Unit {
  readonly code: string;
  readonly quantity: Quantity;
  /** What a person reads beside the number. */
  readonly label: string;
  readonly scale: number;
  readonly offset: number;
  readonly aliases: readonly string[];
}

/** UCUM 2.2: [degF] is K = (F + 459.67) * 5/9, so °C = (F - 32) * 5/9. */
const FIVE_NINTHS = 5 / 9;
/** UCUM 2.2: [psi] = [lbf_av]/[in_i]2. */
const PASCAL_PER_PSI = 6894.757293168361;
/** UCUM 2.2: [in_i'H2O] from m[H2O] = 9.80665 kPa. */
const PASCAL_PER_INCH_OF_WATER = 249.08891;
/** International avoirdupois pound, exact. */
const KILOGRAM_PER_POUND = 0.45359237;

function unit(
  code: string,
  quantity: Quantity,
  label: string,
  scale: number,
  offset: number,
  aliases: readonly string[],
): Unit {
  return { code, quantity, label, scale, offset, aliases };
}

export const UNITS: readonly Unit[] = [
  unit('Cel', 'temperature', '°C', 1, 0, ['°C', 'C', 'degC', 'celsius']),
  unit('[degF]', 'temperature', '°F', FIVE_NINTHS, -32 * FIVE_NINTHS, ['°F', 'F', 'degF', 'fahrenheit']),
  unit('K', 'temperature', 'K', 1, -273.15, ['kelvin']),
  unit('Pa', 'pressure', 'Pa', 1, 0, ['pascal']),
  unit('hPa', 'pressure', 'hPa', 100, 0, []),
  unit('kPa', 'pressure', 'kPa', 1000, 0, []),
  unit('bar', 'pressure', 'bar', 100_000, 0, []),
  unit('mbar', 'pressure', 'mbar', 100, 0, []),
  unit('[psi]', 'pressure', 'psi', PASCAL_PER_PSI, 0, ['psi', 'psig']),
  unit("[in_i'H2O]", 'pressure', 'inH₂O', PASCAL_PER_INCH_OF_WATER, 0, ['inH2O', 'in[H2O]', 'inWC']),
  unit('[ppm]', 'carbon-monoxide', 'ppm', 1, 0, ['ppm']),
  unit('/', 'carbon-monoxide', 'ratio', 1_000_000, 0, ['1']),
  unit('kg', 'mass', 'kg', 1, 0, []),
  unit('g', 'mass', 'g', 0.001, 0, []),
  unit('[lb_av]', 'mass', 'lb', KILOGRAM_PER_POUND, 0, ['lb', 'lbs']),
  unit('V', 'emf', 'V', 1, 0, []),
  unit('mV', 'emf', 'mV', 0.001, 0, []),
  unit('uV', 'emf', 'µV', 0.000_001, 0, ['µV', 'μV']),
  unit('%', 'oxygen', '%', 1, 0, ['%vol', 'vol%']),
  unit('/', 'oxygen', 'ratio', 100, 0, ['1']),
  unit('[ppm]', 'carbon-dioxide', 'ppm', 1, 0, ['ppm']),
  unit('/', 'carbon-dioxide', 'ratio', 1_000_000, 0, ['1']),
  unit('%', 'carbon-dioxide', '%', 10_000, 0, ['%vol', 'vol%']),
  unit('%RH', 'relative-humidity', '% RH', 1, 0, ['%']),
];

export const BASE_UNIT: Readonly<Record<Quantity, string>> = {
  temperature: 'Cel',
  pressure: 'Pa',
  'carbon-monoxide': '[ppm]',
  mass: 'kg',
  emf: 'V',
  'carbon-dioxide': '[ppm]',
  oxygen: '%',
  'relative-humidity': '%RH',
};

const byName = new Map<string, readonly Unit[]>();
for (const entry of UNITS) {
  for (const name of [entry.code, ...entry.aliases]) byName.set(name, [...(byName.get(name) ?? []), entry]);
}

/** Every unit that a code or a common spelling names: ppm is one of two gases, % of three quantities. */
export function unitsNamed(name: string): readonly Unit[] {
  return byName.get(name) ?? [];
}

/**
 * The unit that a code or a common spelling names, or undefined when nobody knows it.
 *
 * @param quantity what it is a unit of; without it the first that bears the name
 */
export function findUnit(name: string, quantity?: Quantity): Unit | undefined {
  return unitsNamed(name).find((each) => quantity === undefined || each.quantity === quantity);
}

/** A value in `from`, expressed in the quantity's base unit. */
export function toBase(value: number, from: Unit): number {
  return value * from.scale + from.offset;
}

/** A base-unit value, expressed in `to`. */
export function fromBase(value: number, to: Unit): number {
  return (value - to.offset) / to.scale;
}

/** A difference (a tolerance, a rate) in base units, expressed in `to`: the offset does not apply. */
export function differenceFromBase(value: number, to: Unit): number {
  return value / to.scale;
}

/** A difference given in `from`, in base units. */
export function differenceToBase(value: number, from: Unit): number {
  return value * from.scale;
}
