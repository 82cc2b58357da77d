import type { IncomingReading, IncomingRefusal, IntakeWrite } from '../archive/types.ts';
import type { InboundMessage } from '../broker/types.ts';
import { isFromFuture } from './convert.ts';
import type { Fault } from './outcome.ts';

/** What a payload comes to for one node, before it is a write. */
export interface Draft {
  readonly node: string;
  readonly status?: 'online' | 'offline';
  readonly readings: readonly IncomingReading[];
  readonly faults: readonly Fault[];
}

/** A draft of nothing but a refusal. */
export function refusedDraft(node: string, { reason, detail }: Fault): Draft {
  return { node, readings: [], faults: [{ reason, detail }] };
}

/** A draft as the archive takes it. Readings from the future are kept, and counted all the same. */
export function toWrite(message: InboundMessage, draft: Draft): IntakeWrite {
  const { topic, payload, receivedAt } = message;
  const ahead = draft.readings.filter(({ at }) => isFromFuture(at, receivedAt));
  const early = ahead.map((reading) => fromFuture(reading, receivedAt));
  return {
    node: draft.node,
    receivedAt,
    topic,
    payload,
    ...(draft.status === undefined ? {} : { status: draft.status }),
    readings: draft.readings,
    refusals: onePerReason([...draft.faults, ...early], topic, payload),
  };
}

function fromFuture({ name, at }: IncomingReading, receivedAt: number): Fault {
  const seconds = Math.round((at - receivedAt) / 1000);
  return {
    reason: 'future-timestamp',
    detail: `${name} is ${seconds} s ahead of the hub's clock: kept, not judged. Check the clocks of node and hub`,
  };
}

/** A payload counts once for a reason, however many of its entries have it: one bad node must not drown the rest. */
function onePerReason(faults: readonly Fault[], topic: string, payload: Uint8Array): IncomingRefusal[] {
  const first = new Map<string, { detail: string; more: number }>();
  for (const { reason, detail } of faults) {
    const known = first.get(reason);
    if (known) known.more += 1;
    else first.set(reason, { detail, more: 0 });
  }
  return [...first].map(([reason, { detail, more }]) => ({
    topic,
    reason,
    detail: more === 0 ? detail : `${detail} (and ${more} more)`,
    payload,
  }));
}
