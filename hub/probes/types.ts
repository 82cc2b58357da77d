import type { Probe, ProbeFaultCode } from '../contract/probe.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { ChannelRole, Furnace } from '../contract/shop.ts';
import type { HeldChannel } from '../judging/held.ts';
import type { ProbeFaultState } from '../physics/probe-faults.ts';

/** A temperature channel of a furnace, in the chamber or on the piece. */
export interface ProbeChannel {
  readonly id: string;
  readonly label: string;
  /** Name of the node that publishes it. */
  readonly node: string;
  readonly role: Extract<ChannelRole, 'chamber' | 'load'>;
  readonly furnaceId: string;
  readonly staleAfterSeconds: number;
  /** Null: nobody has said what it is. */
  readonly probe: Probe | null;
  /** Id of the channel that measures its terminals; null when there is none. */
  readonly junction: string | null;
}

/** What there is to be looked after. */
export interface ProbesConfig {
  readonly channels: readonly ProbeChannel[];
  /** Every channel that some probe takes for its terminals. */
  readonly junctions: readonly { readonly id: string; readonly staleAfterSeconds: number }[];
  readonly furnaces: readonly Pick<Furnace, 'id' | 'name' | 'kind'>[];
  readonly hotAboveCelsius: number;
}

/** Instants in epoch ms. */
export type ProbesInput =
  | { readonly kind: 'reading'; readonly reading: ChannelReading }
  | { readonly kind: 'tick'; readonly at: number };

/** What a probe was last said to have, with the numbers of that moment. */
export interface ToldFault {
  readonly fault: ProbeFaultCode;
  readonly since: number;
  /** The last reading that showed it, epoch ms. */
  readonly lastAt: number;
  readonly evidence: Readonly<Record<string, number | string>>;
}

/** What is remembered of one probe; of constant size. */
export interface ProbeState {
  readonly faults: ProbeFaultState;
  /** Smallest change between two good readings so far: the digitiser's step, when nobody has said it, °C. */
  readonly finestChangeCelsius: number | null;
  /** The last time it read no more than a shop can be warm, epoch ms. */
  readonly coolAt: number | null;
  /** Its last word was a good reading. */
  readonly usable: boolean;
  readonly told: ToldFault | null;
}

export interface ProbesState {
  readonly at: number;
  readonly probes: Readonly<Record<string, ProbeState>>;
  /** Last good values of probes and of junctions. */
  readonly values: Readonly<Record<string, HeldChannel>>;
  /** Chambers that were hot at their last word, with a deadband. */
  readonly hot: Readonly<Record<string, true>>;
}

/** A firing that runs now. */
export interface ProbesFiring {
  readonly firingId: string;
  readonly furnaceId: string;
  readonly watched: readonly string[];
}
