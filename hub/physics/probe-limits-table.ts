/**
 * Recommended upper temperature limits of thermocouple probes by size.
 *
 * Guide values for life and stability, not safety limits and no guarantee.
 */

import type { ProbeProvenance } from './probe-provenance.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';

/** The limit of one type at one size. */
export interface LimitRow {
  readonly types: readonly ThermocoupleType[];
  /** Nominal wire or sheath diameter, mm. */
  readonly millimetres: number;
  readonly celsius: number;
  readonly from: ProbeProvenance;
}

const e230Published: ProbeProvenance = {
  standing: 'published-secondary',
  source: 'ASTM E230 Table 6, reprinted by two sensor makers',
};

const e230OneReprint: ProbeProvenance = {
  standing: 'published-secondary',
  source: 'ASTM E230 Table 6, reprinted by one wire maker; the same from memory',
};

const e230Gauge14: ProbeProvenance = {
  ...e230Published,
  note: 'the reprints give 2000 °F (1093 °C); one misprints the °C figure as 980',
};

const e230Gauge30E: ProbeProvenance = {
  standing: 'from-memory',
  source: 'ASTM E230 Table 6',
  note: 'reprints give 430 °C; the lower is used',
};

const e608: ProbeProvenance = {
  standing: 'from-memory',
  source: 'ASTM E608/E608M Table 1',
  note: "the sheath alloy can set a lower limit: makers' guides stop stainless sheaths near 800 °C",
};

const e608Corroborated: ProbeProvenance = {
  standing: 'published-secondary',
  source: "a sensor maker's guide by sheath diameter; the same from memory: ASTM E608/E608M Table 1",
};

const e608T: ProbeProvenance = {
  ...e608,
  note: "a sensor maker's guide gives 370 °C at 3 mm and 315 °C at 2 mm; the lower is used",
};

/** American wire gauge numbers of the table columns with their diameters in mm. */
const gauge = { 8: 3.25, 14: 1.63, 20: 0.81, 24: 0.51, 28: 0.33, 30: 0.25 } as const;

type Gauge = keyof typeof gauge;

function wire(
  types: readonly ThermocoupleType[],
  cells: readonly (readonly [Gauge, number, ProbeProvenance])[],
): LimitRow[] {
  return cells.map(([awg, celsius, from]) => ({ types, millimetres: gauge[awg], celsius, from }));
}

/** Wires inside a closed protecting tube, by wire diameter. Thickest first. */
export const protectedWireLimits: readonly LimitRow[] = [
  ...wire(
    ['K', 'N'],
    [
      [8, 1260, e230Published],
      [14, 1090, e230Gauge14],
      [20, 980, e230Published],
      [24, 870, e230Published],
      [28, 870, e230Published],
      [30, 760, e230OneReprint],
    ],
  ),
  ...wire(
    ['J'],
    [
      [8, 760, e230Published],
      [14, 590, e230Published],
      [20, 480, e230Published],
      [24, 370, e230Published],
      [28, 370, e230Published],
      [30, 320, e230OneReprint],
    ],
  ),
  ...wire(
    ['E'],
    [
      [8, 870, e230Published],
      [14, 650, e230Published],
      [20, 540, e230Published],
      [24, 430, e230Published],
      [28, 430, e230Published],
      [30, 370, e230Gauge30E],
    ],
  ),
  ...wire(
    ['T'],
    [
      [14, 370, e230OneReprint],
      [20, 260, e230OneReprint],
      [24, 200, e230OneReprint],
      [28, 200, e230OneReprint],
      [30, 150, e230OneReprint],
    ],
  ),
  ...wire(['R', 'S'], [[24, 1480, e230Published]]),
  ...wire(['B'], [[24, 1700, e230Published]]),
];

function sheath(
  types: readonly ThermocoupleType[],
  from: ProbeProvenance,
  celsius: readonly number[],
): LimitRow[] {
  const sheathMillimetres = [8, 6, 4.5, 3, 2, 1.5, 1, 0.5];
  return celsius.map((limit, index) => ({
    types,
    millimetres: sheathMillimetres[index] ?? Number.NaN,
    celsius: limit,
    from,
  }));
}

/** Mineral-insulated, metal-sheathed probes, by sheath diameter. Thickest first. */
export const mineralInsulatedLimits: readonly LimitRow[] = [
  ...sheath(['K', 'N'], e608, [1150, 1150, 1150, 1070, 1000, 920, 700, 700]),
  ...sheath(['J'], e608Corroborated, [720, 720, 620, 520, 440, 440, 260, 260]),
  ...sheath(['E'], e608, [820, 820, 730, 650, 510, 510, 300, 300]),
  ...sheath(['T'], e608T, [370, 370, 370, 315, 260, 260, 260, 260]),
];
