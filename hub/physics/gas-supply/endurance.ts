/**
 * How long the gas lasts, as a range: what the route `gas/endurance` answers.
 *
 * The mass sets the top of the range. The bottom is the lesser of the mass that
 * can really be drawn and the moment at which boiling no longer keeps up.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { PROPANE_NET_HEAT_JOULES_PER_KILOGRAM } from '../propane.ts';
import type { MassBand } from './cylinder.ts';
import { PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM } from './heat-input.ts';
import { COLDEST_TABLE_CELSIUS, continuousDraw } from './vaporisation.ts';

/** The flow, one way or another. */
export type Draw =
  | { readonly kind: 'mass'; readonly kilogramsPerHour: number }
  | { readonly kind: 'net'; readonly kilowatts: number }
  | { readonly kind: 'gross'; readonly kilowatts: number };

export interface EnduranceQuestion {
  /** Left in one cylinder, kg, 0 <= low <= value <= high. */
  readonly contents: MassBand;
  readonly draw: Draw;
  /** Error of the draw as a share, 0 to 0.9; 0.15 where left out. */
  readonly drawErrorShare?: number;
  /** What one cylinder holds full, kg; needed for what boiling can keep up with. */
  readonly fullKilograms?: number;
  /** Of the air around the cylinder, °C. */
  readonly airCelsius?: number;
  /** Cylinders that feed together and are equally full, 1 to 50; 1 where left out. */
  readonly cylinders?: number;
}

/** Hours. */
export interface EnduranceReport {
  readonly low: number;
  readonly value: number;
  readonly high: number;
  /** What ends it first at the bottom of the range. */
  readonly limitedBy: 'mass' | 'vaporisation';
  readonly kilogramsPerHour: number;
  /** Hours until boiling no longer keeps up with a draw without pauses; null where not known. */
  readonly vaporisationHours: number | null;
  /** Most that one cylinder gives for hours on end as it stands, kg/h; null where not known. */
  readonly continuousKilogramsPerHour: number | null;
}

/** The last share of a full cylinder, which in the cold often will not come out. 10 to 20 %: common practice. */
export const RESERVE_SHARE = 0.2;
/** From here on the reserve is taken to come out. Derived here. */
const COLD_CELSIUS = 10;
const USUAL_ERROR_SHARE = 0.15;

/**
 * Endurance of a cylinder or of several that feed together.
 *
 * Hours are mass over flow. Source: arithmetic; vaporisation by the published table of the 100 lb cylinder.
 *
 * @throws PhysicsError `bad-input` for contents out of order, `no-solution` for a draw of nothing, `out-of-range`
 */
export function endurance(question: EnduranceQuestion): EnduranceReport {
  const { contents, drawErrorShare = USUAL_ERROR_SHARE, cylinders = 1 } = question;
  requireContents(contents);
  requireRange('Error of the draw', drawErrorShare, 0, 0.9, '');
  requireRange('Cylinders', cylinders, 1, 50, '');
  const kilogramsPerHour = massFlow(question.draw);
  const each = kilogramsPerHour / cylinders;
  const most = each * (1 + drawErrorShare);
  const usable = Math.max(0, contents.low - reserveOf(question));
  const massLow = usable / most;
  const vaporisation = vaporisationHours(question, most);
  const low = Math.min(massLow, vaporisation?.hours ?? Number.POSITIVE_INFINITY);
  return {
    low,
    value: contents.value / each,
    high: contents.high / (each * (1 - drawErrorShare)),
    limitedBy: low < massLow ? 'vaporisation' : 'mass',
    kilogramsPerHour,
    vaporisationHours: vaporisation?.hours ?? null,
    continuousKilogramsPerHour: vaporisation?.continuous ?? null,
  };
}

function requireContents({ low, value, high }: MassBand): void {
  requireRange('Gas left', value, 0, 1e4, 'kg');
  if (low >= 0 && low <= value && value <= high) return;
  throw new PhysicsError('bad-input', 'what is left is 0 <= low <= value <= high', { low, value, high });
}

/**
 * A draw as mass flow, kg/h.
 *
 * @throws PhysicsError `no-solution` for a draw of nothing, which never ends; `out-of-range`
 */
export function massFlow(draw: Draw): number {
  const flow = requireRange('Draw', rawFlow(draw), 0, 1e4, 'kg/h');
  if (flow > 0) return flow;
  throw new PhysicsError('no-solution', 'A draw of nothing never empties a cylinder', { ...draw });
}

function rawFlow(draw: Draw): number {
  switch (draw.kind) {
    case 'mass':
      return draw.kilogramsPerHour;
    case 'net':
      return (draw.kilowatts * 3.6e6) / PROPANE_NET_HEAT_JOULES_PER_KILOGRAM;
    case 'gross':
      return (draw.kilowatts * 3.6e6) / PROPANE_GROSS_HEAT_JOULES_PER_KILOGRAM;
    default:
      return draw satisfies never;
  }
}

function reserveOf({ fullKilograms, contents, airCelsius }: EnduranceQuestion): number {
  if (airCelsius !== undefined && airCelsius >= COLD_CELSIUS) return 0;
  return RESERVE_SHARE * (fullKilograms ?? contents.high);
}

/** Until the contents have fallen to where the table's continuous draw is the draw: the table rises with contents. */
function vaporisationHours(question: EnduranceQuestion, draw: number) {
  const { fullKilograms, airCelsius, contents } = question;
  if (fullKilograms === undefined || airCelsius === undefined) return null;
  // Colder than the published table nothing is counted on: that is the short end.
  if (airCelsius < COLDEST_TABLE_CELSIUS) return { hours: 0, continuous: null };
  const giving = (kilograms: number) =>
    continuousDraw({ fullKilograms, airCelsius, kilograms: Math.min(kilograms, fullKilograms) })
      .kilogramsPerHour;
  const continuous = giving(contents.value);
  if (giving(contents.low) <= draw) return { hours: 0, continuous };
  let [low, high] = [0, contents.low];
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2;
    if (giving(middle) < draw) low = middle;
    else high = middle;
  }
  return { hours: (contents.low - high) / draw, continuous };
}

/**
 * Whether the gas lasts for a time still to go.
 * - `will-not-last`: not even at the top of the range
 * - `may-not-last`: the range ends inside that time
 * - `expected-to-last`: the whole range is longer; an expectation, no promise
 */
export type LastsVerdict = 'will-not-last' | 'may-not-last' | 'expected-to-last';

/** Compares a range with the hours that a firing still needs. */
export function lastsFor(report: EnduranceReport, hours: number): LastsVerdict {
  if (hours > report.high) return 'will-not-last';
  return hours > report.low ? 'may-not-last' : 'expected-to-last';
}
