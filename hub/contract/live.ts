import { z } from 'zod';
import { Alarm } from './alarm.ts';
import { Firing, FiringEvent, FiringJudgement } from './firing.ts';
import { EpochMs, Reading } from './reading.ts';
import { Channel, Furnace, Shop, ShopNode } from './shop.ts';

/**
 * The live feed, `WebSocket /api/v1/live`. The hub speaks first with a snapshot (or, to a client that says
 * `?after=SEQ&epoch=EPOCH` and is not too far behind, with the changes since), then with changes. Every change
 * carries a rising sequence number. A heartbeat comes every two seconds: silence is blindness, and the wall
 * says so.
 */

/** A running firing as the feed carries it: the schedule's frozen copy and its judged state. */
export const LiveFiring = z.object({
  firing: Firing,
  judgement: FiringJudgement.omit({ events: true }),
  arrests: z.array(FiringEvent).describe('Where the steel turned, as it was found: marks for the curve'),
});
export type LiveFiring = z.infer<typeof LiveFiring>;

export const LiveSnapshot = z.object({
  type: z.literal('snapshot'),
  seq: z.int(),
  epoch: z
    .string()
    .describe('Changes with every start of the hub: sequence numbers of another epoch mean nothing'),
  now: EpochMs,
  shop: Shop,
  furnaces: z.array(Furnace),
  nodes: z.array(ShopNode),
  channels: z.array(Channel),
  firings: z.array(LiveFiring),
  alarms: z.array(Alarm).describe('Every alarm that is not normal'),
});
export type LiveSnapshot = z.infer<typeof LiveSnapshot>;

export const LiveChange = z.discriminatedUnion('type', [
  z.object({ type: z.literal('reading'), seq: z.int(), channel: z.string(), reading: Reading }),
  z.object({
    type: z.literal('firing'),
    seq: z.int(),
    id: z.string(),
    live: LiveFiring.nullable().describe('null: not running any more'),
  }),
  z.object({ type: z.literal('alarm'), seq: z.int(), alarm: Alarm }),
  z.object({ type: z.literal('node'), seq: z.int(), node: ShopNode }),
  z.object({ type: z.literal('channel'), seq: z.int(), channel: Channel }),
  z.object({ type: z.literal('furnace'), seq: z.int(), furnace: Furnace }),
  z.object({ type: z.literal('shop'), seq: z.int(), shop: Shop }),
]);
export type LiveChange = z.infer<typeof LiveChange>;

export const LiveHeartbeat = z.object({
  type: z.literal('heartbeat'),
  seq: z.int(),
  now: EpochMs,
  judging: z
    .boolean()
    .describe('False: readings are kept, but a judge has failed and nothing is being judged'),
  alarmFloodSince: EpochMs.nullable()
    .optional()
    .describe('Since when more alarms come than a person can answer (ISA-18.2); null: no flood'),
});
export type LiveHeartbeat = z.infer<typeof LiveHeartbeat>;

export const LiveMessage = z.union([LiveSnapshot, LiveChange, LiveHeartbeat]);
export type LiveMessage = z.infer<typeof LiveMessage>;

export const HEARTBEAT_SECONDS = 2;
/** Without any message for this long, the wall must say that it is blind. */
export const BLIND_AFTER_SECONDS = 5;
