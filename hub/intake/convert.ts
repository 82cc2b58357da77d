import type { IncomingReading } from '../archive/types.ts';
import { QUANTITY_FACTS } from '../contract/quantity.ts';
import type { Quality, QualityReason } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { BASE_UNIT, type Quantity, toBase, type Unit, unitsNamed } from '../contract/units.ts';
import { hintedQuantity } from './hinted-quantity.ts';
import { type Outcome, quoted, refused, understood } from './outcome.ts';
import { fromSecondaryUnit } from './senml-units.ts';

/** What intake has to know of a channel to read its payloads. */
export type KnownChannel = Pick<
  Channel,
  'node' | 'name' | 'quantity' | 'unit' | 'possibleLow' | 'possibleHigh' | 'probe'
>;

/** One value as it was sent, with its instant settled. */
export interface Measurement {
  readonly name: string;
  /** Epoch milliseconds UTC. */
  readonly at: number;
  readonly value: number;
  /** As the payload or the binding names it; null when nobody did. */
  readonly unit: string | null;
  /** What a binding says it measures; null leaves it to the channel, then to the unit. */
  readonly quantity: Quantity | null;
}

interface InBase {
  readonly quantity: Quantity;
  readonly value: number;
}

/** Clocks of small nodes are never exact; beyond this a reading is from the future. Common practice, no source. */
export const FUTURE_SKEW_MS = 10_000;

export function isFromFuture(at: number, receivedAt: number): boolean {
  return at > receivedAt + FUTURE_SKEW_MS;
}

/**
 * A sent value as a reading in base units with its quality.
 *
 * Refusals: `unit-missing` (no unit said, channel unknown), `unknown-unit`, `wrong-unit` (of another quantity),
 * `not-finite`. A value outside what the sensor can mean is kept as bad `out-of-range`, one from the future as
 * uncertain `future`.
 */
export function toReading(
  measurement: Measurement,
  channel: KnownChannel | undefined,
  receivedAt: number,
): Outcome<IncomingReading> {
  const inBase = toBaseUnit(measurement, channel);
  if (!inBase.ok) return inBase;
  const { quantity, value } = inBase.value;
  const { name, at } = measurement;
  const quality = qualityOf(channel, { quantity, at, value }, receivedAt);
  return understood({ name, quantity, at, value, ...quality });
}

function toBaseUnit(measurement: Measurement, channel: KnownChannel | undefined): Outcome<InBase> {
  const { unit: name, quantity: bound, value } = measurement;
  const expected = channel?.quantity ?? bound;
  const stated = name ?? channel?.unit ?? (expected && BASE_UNIT[expected]);
  if (stated === null) {
    return refused(
      'unit-missing',
      'no unit is said and the channel is not known: say "u" or set the channel up',
    );
  }
  const known = readUnit(stated, value, expected ?? hintedQuantity(measurement.name));
  if (!known) return refused('unknown-unit', `the unit ${quoted(stated)} is not known`);
  const { unit } = known;
  if (expected !== null && unit.quantity !== expected) {
    return refused(
      'wrong-unit',
      `${quoted(stated)} is a unit of ${unit.quantity}, the channel is ${expected}`,
    );
  }
  const converted = toBase(known.value, unit);
  if (!Number.isFinite(converted)) return refused('not-finite', 'the value is beyond what a number can hold');
  return understood({ quantity: unit.quantity, value: converted });
}

/** By our own table first: it knows what people type. What is left of SenML's secondary units comes second. */
function readUnit(
  name: string,
  value: number,
  wanted: Quantity | null,
): { unit: Unit; value: number } | undefined {
  const unit = oneOf(unitsNamed(name), wanted);
  if (unit) return { unit, value };
  const primary = fromSecondaryUnit(name, value);
  const primaryUnit = primary && oneOf(unitsNamed(primary.unit), wanted);
  return primaryUnit && { unit: primaryUnit, value: primary.value };
}

/**
 * Of several quantities that share a unit, the one that is meant. Where nobody says, a share of the air counts as
 * carbon monoxide: that mistake is loud. A bare % is not guessed at: it may be a battery.
 */
function oneOf(units: readonly Unit[], wanted: Quantity | null): Unit | undefined {
  const meant = units.find((unit) => unit.quantity === wanted);
  const [first] = units;
  const guessable = units.length === 1 || first?.quantity === 'carbon-monoxide' || wanted !== null;
  return meant ?? (guessable ? first : undefined);
}

/** How far a value can be trusted. An impossible one is bad whenever it was taken: it is never judged. */
export function qualityOf(
  channel: Pick<KnownChannel, 'possibleLow' | 'possibleHigh'> | undefined,
  { quantity, at, value }: Pick<IncomingReading, 'quantity' | 'at' | 'value'>,
  receivedAt: number,
): { quality: Quality; reason?: QualityReason } {
  const { low, high } = QUANTITY_FACTS[quantity].possible;
  const possible = value >= (channel?.possibleLow ?? low) && value <= (channel?.possibleHigh ?? high);
  if (!possible) return { quality: 'bad', reason: 'out-of-range' };
  if (isFromFuture(at, receivedAt)) return { quality: 'uncertain', reason: 'future' };
  return { quality: 'good' };
}
