import type { AlarmKind } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { Quantity } from '../contract/units.ts';
import type { ConditionState } from '../judging/condition.ts';
import type { HeldChannel } from '../judging/held.ts';

/** Gases that the air of a shop is judged by. */
export type AirGas = Extract<Quantity, 'carbon-monoxide' | 'carbon-dioxide' | 'oxygen'>;

export interface AirChannel {
  readonly id: string;
  readonly label: string;
  readonly staleAfterSeconds: number;
  /** Carbon monoxide where left out. */
  readonly gas?: AirGas;
  /** A value from here on means that the sensor can tell no more, base unit; nothing is told where left out. */
  readonly fullScale?: number;
}

export interface AirConfig {
  readonly channels: readonly AirChannel[];
  /** Limits on the instant reading of carbon monoxide, ppm. */
  readonly firstPpm: number;
  readonly secondPpm: number;
  /** Of the shop's profile of limits; what is left out is not judged. */
  readonly ceilingPpm?: number;
  readonly idlhPpm?: number;
}

export type AirInput =
  | { readonly kind: 'reading'; readonly reading: ChannelReading }
  | { readonly kind: 'tick'; readonly at: number };

/** Alarms about the level of the instant, loudest first. */
export const LEVEL_KINDS = [
  'unsafe-air-idlh',
  'unsafe-air-second',
  'unsafe-air-ceiling',
  'unsafe-air-low-oxygen',
  'unsafe-air-carbon-dioxide-second',
  'unsafe-air-first',
  'unsafe-air-carbon-dioxide-first',
  'unsafe-air-high-oxygen',
] as const satisfies readonly AlarmKind[];
export type LevelKind = (typeof LEVEL_KINDS)[number];

export interface LimitState {
  readonly condition: ConditionState;
  /** Readings in a row on the wrong side of the limit. */
  readonly samples: number;
}

export interface AirChannelState {
  readonly held: HeldChannel;
  /** Of the limits that this channel's gas has. */
  readonly limits: Readonly<Partial<Record<LevelKind, LimitState>>>;
  readonly saturated: ConditionState;
}

export interface AirState {
  /** Epoch ms. */
  readonly at: number;
  /** In the order of `AirConfig.channels`. */
  readonly channels: readonly AirChannelState[];
}
