/**
 * How much gas a cylinder can give for hours on end: its liquid boils only as
 * fast as the air can warm it.
 *
 * All draws are the heat of the gas, W gross, as the tables state them.
 */
import type { Provenance } from '../carbon-monoxide/provenance.ts';
import { requireRange } from '../errors.ts';
import { PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM } from './heat-input.ts';
import { fahrenheitOf, KILOGRAMS_PER_POUND, METRES_PER_INCH, WATTS_PER_BTU_PER_HOUR } from './trade-units.ts';

/** 0 °F, where the published table ends. */
export const COLDEST_TABLE_CELSIUS = -17.78;

const FAHRENHEIT = [0, 20, 40, 60, 70] as const;

/** Pounds left in a 100 lb cylinder; thousands of Btu/h at each temperature of FAHRENHEIT. */
const HUNDRED_POUND: readonly (readonly [pounds: number, thousands: readonly number[]])[] = [
  [10, [28, 38, 49, 60, 66]],
  [20, [36, 51, 68, 83, 92]],
  [30, [45, 66, 85, 107, 118]],
  [40, [55, 79, 105, 131, 141]],
  [50, [64, 94, 125, 154, 167]],
  [60, [75, 109, 140, 176, 192]],
  [70, [83, 122, 160, 199, 214]],
  [80, [94, 137, 180, 214, 236]],
  [90, [104, 152, 200, 247, 277]],
  [100, [113, 167, 214, 277, 300]],
];

const FULL_POUNDS = 100;
const TABLE: Provenance = {
  standing: 'published-secondary',
  source: 'generator installation manual and supplier chart: 100 lb DOT cylinder, maximum continuous draw',
};
const SCALED: Provenance = {
  standing: 'derived-here',
  source: 'the table of the 100 lb cylinder, scaled by wetted wall (mass to the power 2/3)',
  note: 'no published table of other cylinders was seen: an estimate only',
};

export interface CylinderNow {
  /** Propane that the cylinder holds when full, 1 to 60 kg; 45.36 for a 100 lb, 9.07 for a 20 lb cylinder. */
  readonly fullKilograms: number;
  /** Left in it, 0 to `fullKilograms`. */
  readonly kilograms: number;
  /** Of the air around it, -17.8 (0 °F) to 60 °C. */
  readonly airCelsius: number;
}

export interface ContinuousDraw {
  /** Heat of the gas, W gross. */
  readonly watts: number;
  readonly kilogramsPerHour: number;
  readonly from: Provenance;
}

/**
 * Most that a cylinder gives for hours on end.
 *
 * Straight between the table's points; above 70 °F the value of 70 °F, and under a tenth left in proportion to
 * nothing, both on the low side. Short draws may be larger.
 *
 * @throws PhysicsError `out-of-range`, below 0 °F too: the table ends there
 */
export function continuousDraw(cylinder: CylinderNow): ContinuousDraw {
  const full = requireRange('Full cylinder', cylinder.fullKilograms, 1, 60, 'kg');
  const left = requireRange('Gas left', cylinder.kilograms, 0, full, 'kg');
  const celsius = requireRange('Air temperature', cylinder.airCelsius, COLDEST_TABLE_CELSIUS, 60, '°C');
  const fullPounds = full / KILOGRAMS_PER_POUND;
  const isTable = Math.abs(fullPounds - FULL_POUNDS) < 0.5;
  const scale = isTable ? 1 : (fullPounds / FULL_POUNDS) ** (2 / 3);
  const thousands = tableThousands((left / full) * FULL_POUNDS, fahrenheitOf(celsius));
  const watts = thousands * 1000 * scale * WATTS_PER_BTU_PER_HOUR;
  return { watts, kilogramsPerHour: kilogramsPerHourOf(watts), from: isTable ? TABLE : SCALED };
}

function kilogramsPerHourOf(wattsGross: number): number {
  return (wattsGross * 3600) / PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM;
}

function tableThousands(pounds: number, fahrenheit: number): number {
  const next = HUNDRED_POUND.findIndex(([at]) => at >= pounds);
  const to = HUNDRED_POUND[next] ?? HUNDRED_POUND.at(-1);
  if (to === undefined) return 0;
  const from = HUNDRED_POUND[next - 1] ?? ([0, FAHRENHEIT.map(() => 0)] as const);
  const share = (pounds - from[0]) / (to[0] - from[0]);
  const [low, high] = [along(from[1], fahrenheit), along(to[1], fahrenheit)];
  return low + (high - low) * share;
}

function along(row: readonly number[], fahrenheit: number): number {
  const at = Math.min(Math.max(fahrenheit, FAHRENHEIT[0]), 70);
  const next = Math.max(
    1,
    FAHRENHEIT.findIndex((point) => point >= at),
  );
  const [x0 = 0, x1 = 1] = [FAHRENHEIT[next - 1], FAHRENHEIT[next]];
  const [y0 = 0, y1 = 0] = [row[next - 1], row[next]];
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}

const RULE_BTU_PER_HOUR = 50_000;

/**
 * 100 lb cylinders that hold a continuous draw at 0 °F by the planning rule of 50 000 Btu/h each.
 *
 * Source: generator installation manual; 200 000 Btu/h needs four.
 *
 * @param watts heat of the gas, gross, above 0
 * @throws PhysicsError `out-of-range`
 */
export function hundredPoundCylindersAtZeroFahrenheit(watts: number): number {
  requireRange('Draw', watts, 1e-6, 1e8, 'W');
  return Math.ceil(watts / WATTS_PER_BTU_PER_HOUR / RULE_BTU_PER_HOUR - 1e-9);
}

/** Percent full and the factor K of the rule for tanks. */
const TANK_FACTORS: readonly (readonly [percent: number, factor: number])[] = [
  [10, 45],
  [20, 60],
  [30, 70],
  [40, 80],
  [50, 90],
  [60, 100],
];

/**
 * Continuous draw of a horizontal tank at 0 °F, W gross: diameter x length x K, inches and Btu/h.
 *
 * Source: generator installation manual; lets the liquid chill to -20 °F. Straight between the factors.
 *
 * @param diameterMetres 0.2 to 4 m
 * @param lengthMetres 0.3 to 30 m
 * @param percentFull 10 to 100 %; above 60 the factor of 60
 * @throws PhysicsError `out-of-range`
 */
export function tankDrawAtZeroFahrenheitWatts(
  diameterMetres: number,
  lengthMetres: number,
  percentFull: number,
): number {
  const diameter = requireRange('Diameter', diameterMetres, 0.2, 4, 'm') / METRES_PER_INCH;
  const length = requireRange('Length', lengthMetres, 0.3, 30, 'm') / METRES_PER_INCH;
  const percent = Math.min(60, requireRange('Filling', percentFull, 10, 100, '%'));
  const next = Math.max(
    1,
    TANK_FACTORS.findIndex(([at]) => at >= percent),
  );
  const [x0, y0] = TANK_FACTORS[next - 1] ?? [0, 0];
  const [x1, y1] = TANK_FACTORS[next] ?? [1, 0];
  const factor = y0 + ((y1 - y0) * (percent - x0)) / (x1 - x0);
  return diameter * length * factor * WATTS_PER_BTU_PER_HOUR;
}
