/**
 * Diffusivity of carbon in steel, m²/s.
 *
 * Austenite: four forms that were worked out apart from each other. At 0.8 %C
 * the three that know of carbon agree within 15 %. The pair printed in
 * textbooks (2.3e-5 m²/s, 148 kJ/mol) is about three times lower than all of
 * them at 0.8 %C: it belongs to nearly carbon-free austenite and would tell a
 * smith that decarburisation is little more than half as deep as it is. So it
 * is not offered here.
 */
import { requireRange } from '../errors.ts';
import type { Band } from '../heat/standing.ts';

/** J/(mol K) and cal/(mol K); °C to K. */
const R_JOULE = 8.314462618;
const R_CALORIE = 1.987204;
const KELVIN = 273.15;

/** Where the austenite forms are used: from the eutectoid to well below melting. */
export const AUSTENITE_LOW_CELSIUS = 727;
export const AUSTENITE_HIGH_CELSIUS = 1200;

export const AUSTENITE_FORMS = ['tibbetts', 'slycke-ericsson', 'agren', 'wells'] as const;
/**
 * - `tibbetts`: J. Appl. Phys. 51 (1980) 4813, in transcription
 * - `slycke-ericsson`: 1981; prefactor seen, exponent from memory
 * - `agren`: Scripta Met. 20 (1986) 1507, from memory
 * - `wells`: Wells, Batz and Mehl 1950, without carbon dependence, from memory
 */
export type AusteniteForm = (typeof AUSTENITE_FORMS)[number];

/**
 * Carbon diffusivity in austenite by one form, m²/s.
 *
 * @param celsius 727 to 1200 °C
 * @param carbonPercent mass % in the austenite, 0 to 1.4
 * @throws PhysicsError `out-of-range` outside these
 */
export function austeniteDiffusivity(form: AusteniteForm, celsius: number, carbonPercent: number): number {
  requireRange('temperature', celsius, AUSTENITE_LOW_CELSIUS, AUSTENITE_HIGH_CELSIUS, '°C');
  const carbon = requireRange('carbon', carbonPercent, 0, 1.4, '%');
  const kelvin = celsius + KELVIN;
  switch (form) {
    case 'tibbetts':
      return 0.47e-4 * Math.exp(-1.6 * carbon) * Math.exp(-(37_000 - 6_600 * carbon) / (R_CALORIE * kelvin));
    case 'slycke-ericsson':
      return slyckeEricsson(kelvin, carbonFraction(carbon));
    case 'agren':
      return agren(kelvin, carbonFraction(carbon));
    case 'wells':
      return 0.12e-4 * Math.exp(-32_000 / (R_CALORIE * kelvin));
    default:
      return form satisfies never;
  }
}

/**
 * Carbon diffusivity in austenite with the spread of the four forms, m²/s. The
 * value is that of Tibbetts, the best sourced one.
 *
 * @throws PhysicsError `out-of-range` as {@link austeniteDiffusivity}
 */
export function austeniteDiffusivityBand(celsius: number, carbonPercent: number): Band {
  const all = AUSTENITE_FORMS.map((form) => austeniteDiffusivity(form, celsius, carbonPercent));
  const value = austeniteDiffusivity('tibbetts', celsius, carbonPercent);
  return { low: Math.min(...all), value, high: Math.max(...all) };
}

/** Alloy content in mass %, for {@link alloyFactor}. */
export interface Alloying {
  readonly si?: number;
  readonly mn?: number;
  readonly cr?: number;
  readonly ni?: number;
  readonly mo?: number;
  readonly al?: number;
  readonly cu?: number;
  readonly v?: number;
}

/**
 * Factor by which alloying multiplies the diffusivity in austenite (Neumann and
 * Person 1968, in transcription). Dimensionless.
 *
 * @throws PhysicsError `out-of-range` when an element is outside 0 to 6 % or
 *   the factor leaves 0.5 to 2, where nobody has checked the polynomial
 */
export function alloyFactor(alloy: Alloying): number {
  const of = (name: keyof Alloying): number => requireRange(name, alloy[name] ?? 0, 0, 6, '%');
  const [si, mn, cr, ni] = [of('si'), of('mn'), of('cr'), of('ni')];
  const [mo, al, cu, v] = [of('mo'), of('al'), of('cu'), of('v')];
  const factor =
    1 +
    (0.15 + 0.033 * si) * si -
    0.0365 * mn -
    (0.13 - 0.0055 * cr) * cr +
    (0.03 - 0.03365 * ni) * ni -
    (0.025 - 0.01 * mo) * mo -
    (0.03 - 0.02 * al) * al -
    (0.016 + 0.0014 * cu) * cu -
    (0.22 - 0.01 * v) * v;
  return requireRange('alloy factor', factor, 0.5, 2, '');
}

/**
 * Measured in ferrite: Budke and Herzig, phys. stat. sol. (a) 127 (1991) 87,
 * table in the abstract; kelvin and m²/s, rising.
 */
const FERRITE_MEASURED: readonly (readonly [kelvin: number, m2s: number])[] = [
  [596, 2.72e-14],
  [648, 1.45e-13],
  [716, 7.88e-13],
  [788, 3.27e-12],
  [884, 1.44e-11],
  [972, 4.7e-11],
  [1021, 8.02e-11],
  [1072, 1.85e-10],
  [1123, 3.13e-10],
];

/**
 * Carbon diffusivity in ferrite, m²/s: measured points, straight in log D over
 * 1/T between them; the band reaches to Wert's line (Phys. Rev. 79 (1950) 601:
 * 0.02 cm²/s, 20.1 kcal/mol).
 *
 * @param celsius 323 to 849 °C
 * @throws PhysicsError `out-of-range` outside the measured temperatures
 */
export function ferriteDiffusivity(celsius: number): Band {
  const kelvin = requireRange('temperature', celsius, 322.85, 849.85, '°C') + KELVIN;
  const wert = 2e-6 * Math.exp(-20_100 / (R_CALORIE * kelvin));
  const next = FERRITE_MEASURED.findIndex(([at]) => at >= kelvin - 1e-9);
  const [hotK, hotD] = FERRITE_MEASURED[Math.max(1, next)] ?? [1123, 3.13e-10];
  const [coldK, coldD] = FERRITE_MEASURED[Math.max(1, next) - 1] ?? [596, 2.72e-14];
  const share = (1 / kelvin - 1 / coldK) / (1 / hotK - 1 / coldK);
  const value = coldD * (hotD / coldD) ** share;
  return { low: Math.min(value, wert), value, high: Math.max(value, wert) };
}

/** Mole fraction of carbon in plain iron-carbon from mass %. */
function carbonFraction(carbonPercent: number): number {
  const carbon = carbonPercent / 12.011;
  return carbon / (carbon + (100 - carbonPercent) / 55.845);
}

function slyckeEricsson(kelvin: number, x: number): number {
  const prefactor = (4.84e-5 * Math.exp(-38 * x)) / (1 - 5 * x);
  return prefactor * Math.exp(-(155_000 - 570_000 * x) / (R_JOULE * kelvin));
}

function agren(kelvin: number, x: number): number {
  const y = x / (1 - x);
  const thermodynamic = 1 + (y * (1 - y) * 8339.9) / kelvin;
  return 4.53e-7 * thermodynamic * Math.exp(-(1 / kelvin - 2.221e-4) * (17_767 - 26_436 * y));
}
