import { openArchive } from '../../hub/archive/open.ts';
import type { Archive } from '../../hub/archive/types.ts';
import type { InboundMessage } from '../../hub/broker/types.ts';
import { type Committer, createCommitter } from '../../hub/intake/committer.ts';
import { createIntake, type Intake } from '../../hub/intake/intake.ts';
import { type VirtualClock, virtualClock } from '../../hub/time/virtual-clock.ts';

export const NOW = 1_700_000_000_000;

/** Ids in order, so that a failure reads the same twice. */
export function countedIds(): () => string {
  let count = 0;
  return () => {
    count += 1;
    return `id-${count}`;
  };
}

export function memoryArchive(): Archive {
  return openArchive({ path: ':memory:', ids: countedIds(), simulated: false, now: NOW });
}

export function message(
  topic: string,
  payload: string | Uint8Array | object,
  extra: Partial<InboundMessage> = {},
): InboundMessage {
  const bytes = payload instanceof Uint8Array ? payload : new TextEncoder().encode(asText(payload));
  return { topic, payload: bytes, qos: 1, fromRetained: false, clientId: 'c', receivedAt: NOW, ...extra };
}

function asText(payload: string | object): string {
  return typeof payload === 'string' ? payload : JSON.stringify(payload);
}

export interface Bench {
  readonly archive: Archive;
  readonly clock: VirtualClock;
  readonly committer: Committer;
  readonly intake: Intake;
  readonly faults: unknown[];
  /** Takes a message in and closes the group that it waits in. */
  take(message: InboundMessage): Promise<void>;
  /** The values kept under a node's channel, in time order; empty when there is no such channel. */
  values(node: string, name: string): readonly number[];
  /** How often each reason was counted for a node. */
  refused(node: string): Readonly<Record<string, number>>;
}

/** Real intake and committer on a real archive in memory, under a virtual clock. */
export function bench(): Bench {
  const archive = memoryArchive();
  const clock = virtualClock(NOW);
  const faults: unknown[] = [];
  const onFault = (fault: unknown) => faults.push(fault);
  const committer = createCommitter({ archive, clock, windowMs: 5, onFault });
  const intake = createIntake({ archive, committer, clock, onFault });
  return {
    archive,
    clock,
    committer,
    intake,
    faults,
    async take(taken) {
      const done = intake.accept(taken);
      clock.advance(5);
      await done;
    },
    values(node, name) {
      const channel = archive.channels().find((known) => known.node === node && known.name === name);
      return channel
        ? archive.readings.range(channel.id, 0, Number.MAX_SAFE_INTEGER).map((r) => r.value)
        : [];
    },
    refused: (node) => archive.node(node)?.refused ?? {},
  };
}
