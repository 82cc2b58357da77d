/**
 * A record cut into legs: stretches that heat or cool as a whole. A recalescence
 * may raise the piece by 40 K in the middle of its cooling without ending a leg.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { fluxInto } from '../heat/exposure.ts';

/** One reading of a thermocouple in contact with the piece. */
export interface LoadPoint {
  readonly atMs: number;
  readonly celsius: number;
  /** Chamber at the same moment, if it was measured: lets its swings be taken out. */
  readonly chamberCelsius?: number;
}

export type Direction = 'heating' | 'cooling';

export interface Leg {
  readonly direction: Direction;
  readonly points: readonly LoadPoint[];
}

/** A turn of the record counts as a turn only when it goes back this far, K. */
const TURN_CELSIUS = 60;

/**
 * Cuts a record into legs, oldest first. Wiggles under 60 K belong to the leg they are in.
 *
 * @throws PhysicsError `bad-input` when time does not rise, `out-of-range` for
 *   a temperature outside -273 to 2000 °C
 */
export function legsOf(record: readonly LoadPoint[]): Leg[] {
  requireRecord(record);
  const turns = turningPoints(record.map((point) => point.celsius));
  return turns.slice(1).map((to, i) => {
    const points = record.slice(turns[i], to + 1);
    const rises = (points.at(-1)?.celsius ?? 0) > (points[0]?.celsius ?? 0);
    return { direction: rises ? 'heating' : 'cooling', points };
  });
}

function requireRecord(record: readonly LoadPoint[]): void {
  for (const [index, point] of record.entries()) {
    requireRange(`temperature of point ${index}`, point.celsius, -273, 2000, '°C');
    if (index === 0 || point.atMs > (record[index - 1]?.atMs ?? 0)) continue;
    throw new PhysicsError('bad-input', `time does not rise at point ${index}`, { index });
  }
}

/** Indices of the first point, of every extreme between legs, and of the last point. */
function turningPoints(celsius: readonly number[]): number[] {
  const turns = [0];
  const at = (index: number): number => celsius[index] ?? Number.NaN;
  let [lowest, highest] = [0, 0];
  let direction = 0;
  for (const [i, value] of celsius.entries()) {
    if (value < at(lowest)) lowest = i;
    if (value > at(highest)) highest = i;
    if (direction >= 0 && at(highest) - value > TURN_CELSIUS) {
      if (direction > 0) turns.push(highest);
      direction = -1;
      lowest = i;
    } else if (direction <= 0 && value - at(lowest) > TURN_CELSIUS) {
      if (direction < 0) turns.push(lowest);
      direction = 1;
      highest = i;
    }
    if (direction > 0) lowest = i;
    if (direction < 0) highest = i;
  }
  if (celsius.length > 1) turns.push(celsius.length - 1);
  return turns;
}

/** Oxidised steel in still gas; only the course of the heat flow matters here, not its size. */
const USUAL = { emissivity: 0.8, film: 10 } as const;

/**
 * How much each interval of a leg counts. Without chamber readings: its seconds.
 * With them: seconds weighted by the heat that flows at that difference, so that
 * a chamber which slackens or swings does not look like an arrest.
 */
export function intervalWeights(leg: Leg): number[] {
  const { points, direction } = leg;
  const flows = points.map((point) => flowInto(point, direction));
  const known = flows.filter((flow) => flow !== null);
  const usual = known.length === points.length ? known.reduce((a, b) => a + b, 0) / known.length : 0;
  return points.slice(1).map((point, i) => {
    const seconds = (point.atMs - (points[i]?.atMs ?? point.atMs)) / 1000;
    const flow = ((flows[i] ?? 0) + (flows[i + 1] ?? 0)) / 2;
    return usual > 0 ? (seconds * flow) / usual : seconds;
  });
}

function flowInto(point: LoadPoint, direction: Direction): number | null {
  if (point.chamberCelsius === undefined) return null;
  const exposure = { ...USUAL, surroundingsCelsius: point.chamberCelsius };
  const flow = fluxInto(exposure, point.chamberCelsius, point.celsius);
  return Math.max(0, direction === 'heating' ? flow : -flow);
}
