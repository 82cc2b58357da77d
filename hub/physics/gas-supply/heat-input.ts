/** Heat and money in a mass of propane. */
import { requireRange } from '../errors.ts';
import { PROPANE_NET_HEAT_JOULES_PER_KILOGRAM } from '../propane.ts';

/** J/kg, gross: the water of the flame condensed (2219.2 kJ/mol over 44.0956 g/mol; NIST, from memory). */
export const PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM = 50.33e6;

const JOULES_PER_KILOWATT_HOUR = 3.6e6;

/** The same flow as heat. Bills and tables from North America are gross, furnaces are judged by net. */
export interface HeatInput {
  readonly kilowattsNet: number;
  readonly kilowattsGross: number;
}

/**
 * Heat input of a propane flow.
 *
 * @param kilogramsPerHour 0 to 10 000 kg/h
 * @throws PhysicsError `out-of-range`
 */
export function heatInput(kilogramsPerHour: number): HeatInput {
  requireRange('Propane', kilogramsPerHour, 0, 1e4, 'kg/h');
  return {
    kilowattsNet: (kilogramsPerHour * PROPANE_NET_HEAT_JOULES_PER_KILOGRAM) / JOULES_PER_KILOWATT_HOUR,
    kilowattsGross: (kilogramsPerHour * PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM) / JOULES_PER_KILOWATT_HOUR,
  };
}

/** What a firing used. */
export interface GasUse {
  readonly kilograms: number;
  readonly kilowattHoursNet: number;
  readonly kilowattHoursGross: number;
  /** In the shop's money; null where no price is known. */
  readonly cost: number | null;
  readonly kilogramsPerPiece: number | null;
  readonly costPerPiece: number | null;
}

/**
 * Heat and cost of a mass of propane, whole and a piece.
 *
 * @param kilograms used, 0 to 100 000 kg
 * @param pricePerKilogram 0 or more, null where not known
 * @param pieces 0 for a firing without pieces
 * @throws PhysicsError `out-of-range`
 */
export function gasUse(kilograms: number, pricePerKilogram: number | null, pieces: number): GasUse {
  requireRange('Propane', kilograms, 0, 1e5, 'kg');
  requireRange('Price', pricePerKilogram ?? 0, 0, 1e9, '/kg');
  requireRange('Pieces', pieces, 0, 1e6, '');
  const cost = pricePerKilogram === null ? null : kilograms * pricePerKilogram;
  return {
    kilograms,
    kilowattHoursNet: (kilograms * PROPANE_NET_HEAT_JOULES_PER_KILOGRAM) / JOULES_PER_KILOWATT_HOUR,
    kilowattHoursGross: (kilograms * PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM) / JOULES_PER_KILOWATT_HOUR,
    cost,
    kilogramsPerPiece: pieces === 0 ? null : kilograms / pieces,
    costPerPiece: pieces === 0 || cost === null ? null : cost / pieces,
  };
}
