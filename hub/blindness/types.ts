import type { ChannelReading } from '../contract/reading.ts';
import type { ChannelRole, Furnace, NodeStatus, ShopSettings } from '../contract/shop.ts';
import type { Quantity } from '../contract/units.ts';
import type { HeldChannel } from '../judging/held.ts';

export interface BlindnessChannel {
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly role: ChannelRole;
  /** Null: the shop. */
  readonly furnaceId: string | null;
  /** Name of the node that publishes it. */
  readonly node: string;
  readonly staleAfterSeconds: number;
}

/** What there is to be watched. */
export interface BlindnessConfig {
  readonly channels: readonly BlindnessChannel[];
  readonly furnaces: readonly Pick<Furnace, 'id' | 'name' | 'kind'>[];
  readonly hotAboveCelsius: number;
  readonly watchCarbonMonoxideFor: ShopSettings['watchCarbonMonoxideFor'];
}

/** Every instant in epoch ms. */
export type BlindnessInput =
  | { readonly kind: 'reading'; readonly reading: ChannelReading }
  | { readonly kind: 'tick'; readonly at: number }
  | { readonly kind: 'node-status'; readonly at: number; readonly node: string; readonly status: NodeStatus }
  | {
      readonly kind: 'firing-running';
      readonly at: number;
      readonly firingId: string;
      readonly furnaceId: string;
      readonly watched: readonly string[];
    }
  | { readonly kind: 'firing-over'; readonly at: number; readonly firingId: string };

export interface RunningFiring {
  readonly firingId: string;
  readonly furnaceId: string;
  readonly watched: readonly string[];
  readonly since: number;
}

export interface BlindnessState {
  readonly at: number;
  readonly startedAt: number;
  readonly channels: Readonly<Record<string, HeldChannel>>;
  /** Offline nodes and since when. */
  readonly offline: Readonly<Record<string, number>>;
  readonly firings: readonly RunningFiring[];
  /** Furnaces that were hot at their last word (with a deadband), and since when. */
  readonly hot: Readonly<Record<string, number>>;
}
