/**
 * SenML secondary units (RFC 8798): `primary = value * scale + offset`. Reading them needs feature 4 of the
 * SenML version (RFC 9100), which the resolver understands. Only the part of the registry that was checked
 * against RFC 8798 is here.
 */
interface SecondaryUnit {
  readonly primary: string;
  readonly scale: number;
  readonly offset: number;
}

function of(primary: string, scale: number, offset = 0): SecondaryUnit {
  return { primary, scale, offset };
}

const SECONDARY_UNITS: ReadonlyMap<string, SecondaryUnit> = new Map([
  ['ms', of('s', 1 / 1000)],
  ['min', of('s', 60)],
  ['h', of('s', 3600)],
  ['kW', of('W', 1000)],
  ['Wh', of('J', 3600)],
  ['kWh', of('J', 3.6e6)],
  ['mV', of('V', 1 / 1000)],
  ['mA', of('A', 1 / 1000)],
  ['dBm', of('dBW', 1, -30)],
  ['ug/m3', of('kg/m3', 1e-9)],
  ['ppm', of('/', 1e-6)],
  ['/100', of('/', 1 / 100)],
  ['/1000', of('/', 1 / 1000)],
  ['hPa', of('Pa', 100)],
  ['mm', of('m', 1 / 1000)],
  ['cm', of('m', 1 / 100)],
  ['km', of('m', 1000)],
  ['km/h', of('m/s', 1 / 3.6)],
]);

/** A value in a secondary unit, in its primary unit; undefined when the unit is not a secondary one. */
export function fromSecondaryUnit(
  unit: string,
  value: number,
): { readonly unit: string; readonly value: number } | undefined {
  const secondary = SECONDARY_UNITS.get(unit);
  if (!secondary) return undefined;
  return { unit: secondary.primary, value: value * secondary.scale + secondary.offset };
}
