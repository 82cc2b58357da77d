import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import type { Channel, ShopSettings } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { type AirLevel, airLevel } from '../wall/foot.ts';
import { freshnessOf } from '../wall/freshness.ts';

/** What each sensor of the room says now. Pure. Blindness comes first: it is louder than any reading. */

export type SensorSays =
  | { readonly kind: 'never' }
  | { readonly kind: 'silent'; readonly value: number; readonly at: number }
  /** It spoke, and what it said is no measurement. */
  | { readonly kind: 'doubtful'; readonly value: number; readonly at: number }
  /** At or past the end of its range: it may be far more. */
  | { readonly kind: 'saturated'; readonly value: number; readonly at: number }
  | { readonly kind: 'measured'; readonly value: number; readonly at: number };

export interface RoomSensor {
  readonly channel: Channel;
  readonly says: SensorSays;
}

export interface CarbonMonoxideNow extends RoomSensor {
  /** Against the alarm limits; null where nothing is measured. */
  readonly level: AirLevel | null;
}

type Limits = Pick<ShopSettings, 'carbonMonoxideFirstPpm' | 'carbonMonoxideSecondPpm'>;
type Spoken = Pick<Channel, 'latest' | 'staleAfterSeconds' | 'possibleHigh' | 'quantity'>;

/** @param nowMs the hub's clock, epoch ms */
export function saysNow(channel: Spoken, nowMs: number): SensorSays {
  const now = freshnessOf(channel, nowMs);
  if (now.kind === 'never') return { kind: 'never' };
  const { value, at } = now.reading;
  if (now.kind === 'old') return { kind: 'silent', value, at };
  const top = channel.possibleHigh ?? QUANTITY_FACTS[channel.quantity].possible.high;
  if (channel.quantity === 'carbon-monoxide' && value >= top) return { kind: 'saturated', value, at };
  return now.kind === 'doubtful' ? { kind: 'doubtful', value, at } : { kind: 'measured', value, at };
}

/** The room's channels that are watched: those of carbon monoxide, and the others. */
export function roomSensors(
  state: FeedState,
  nowMs: number,
): { readonly carbonMonoxide: readonly CarbonMonoxideNow[]; readonly others: readonly RoomSensor[] } {
  const watched = [...state.channels.values()].filter(({ adopted }) => adopted);
  const limits = state.shop.settings;
  const carbonMonoxide = watched
    .filter(({ quantity }) => quantity === 'carbon-monoxide')
    .map((channel) => withLevel({ channel, says: saysNow(channel, nowMs) }, limits))
    .sort((a, b) => urgency(a) - urgency(b));
  const others = watched
    .filter(({ quantity, role }) => role === 'room-air' && quantity !== 'carbon-monoxide')
    .map((channel) => ({ channel, says: saysNow(channel, nowMs) }));
  return { carbonMonoxide, others };
}

function withLevel(sensor: RoomSensor, limits: Limits): CarbonMonoxideNow {
  const { says } = sensor;
  return { ...sensor, level: says.kind === 'measured' ? airLevel(says.value, limits) : null };
}

const ORDER: Readonly<Record<AirLevel, number>> = { 'over-second': 2, 'over-first': 3, 'under-first': 4 };

function urgency({ says, level }: CarbonMonoxideNow): number {
  if (level !== null) return ORDER[level];
  return says.kind === 'saturated' ? 1 : 0;
}

/** What to know of a sensor's age. */
export type DateNote =
  | { readonly kind: 'overdue' | 'ended' | 'due' | 'ends' | 'calibrated'; readonly at: number }
  | { readonly kind: 'no-dates' };

type Dates = Pick<Channel, 'calibratedAt' | 'calibrationDueAt' | 'endOfLifeAt'>;

/** Notes on a sensor's dates, the grave ones first. */
export function dateNotes({ calibratedAt, calibrationDueAt, endOfLifeAt }: Dates, nowMs: number): DateNote[] {
  const notes: DateNote[] = [];
  if (endOfLifeAt !== null) notes.push({ kind: nowMs >= endOfLifeAt ? 'ended' : 'ends', at: endOfLifeAt });
  if (calibrationDueAt !== null) {
    notes.push({ kind: nowMs >= calibrationDueAt ? 'overdue' : 'due', at: calibrationDueAt });
  }
  if (calibratedAt !== null) notes.push({ kind: 'calibrated', at: calibratedAt });
  const grave = ({ kind }: DateNote) => (kind === 'ended' || kind === 'overdue' ? 0 : 1);
  return notes.length === 0 ? [{ kind: 'no-dates' }] : notes.sort((a, b) => grave(a) - grave(b));
}
