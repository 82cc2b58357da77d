import { ArchiveError } from '../archive/errors.ts';
import type { Archive, IntakeWrite } from '../archive/types.ts';
import type { InboundMessage } from '../broker/types.ts';
import type { Clock } from '../time/clock.ts';
import { boundNode, readThrough } from './bindings.ts';
import { type Catalogue, createCatalogue } from './catalogue.ts';
import type { Committer } from './committer.ts';
import { type Draft, refusedDraft, toWrite } from './draft.ts';
import { readReadings, readStatus } from './native.ts';
import { refused } from './outcome.ts';
import { createJunctions } from './probe-junctions.ts';
import { withProbes } from './probes.ts';
import { filterMatches, NATIVE_FILTERS, topicKind } from './topics.ts';

/** A larger payload is refused without being looked into: it would hold the hub's one thread too long. */
export const MOST_PAYLOAD_BYTES = 256 * 1024;

export interface IntakeOptions {
  readonly archive: Pick<Archive, 'channels' | 'bindings' | 'readings'>;
  readonly committer: Committer;
  readonly clock: Clock;
  /** Told of a mistake of our own while reading a payload; the payload is refused as `internal-fault`. */
  readonly onFault?: (fault: unknown) => void;
}

export interface Intake {
  /**
   * Takes a message in: resolved means that all it says, or why it was refused, is committed. It rejects only
   * when the archive failed; whatever cannot be understood becomes a counted refusal.
   */
  accept(message: InboundMessage): Promise<void>;
  /** Channels or bindings were changed by a person: reads them again. */
  refresh(): void;
  /** The topic filters whose messages are wanted: the native ones and those of the bindings. */
  subscriptions(): readonly string[];
  /** Counts a packet so large that the broker closed the connection on it. */
  reportOversize(seen: { readonly clientId: string | null; readonly bytes: number }): Promise<void>;
}

export function createIntake({ archive, committer, clock, onFault = () => {} }: IntakeOptions): Intake {
  const catalogue = createCatalogue(archive);
  const junctions = createJunctions(archive, catalogue);
  committer.onCommit(({ channels }) => catalogue.learn(channels));

  function understand(message: InboundMessage): readonly IntakeWrite[] {
    try {
      return readMessage(message, catalogue)
        .map((draft) => withProbes(draft, message.receivedAt, { catalogue, junctions }))
        .map((draft) => toWrite(message, draft));
    } catch (fault) {
      // Not a mistake in reading: unacknowledged, the payload comes again.
      if (fault instanceof ArchiveError) throw fault;
      onFault(fault);
      const refusal = refused(
        'internal-fault',
        'a mistake in this program, not in the payload: please report it',
      );
      return [toWrite(message, refusedDraft('', refusal))];
    }
  }

  return {
    async accept(message) {
      await Promise.all(understand(message).map((write) => committer.submit(write)));
    },
    refresh: () => catalogue.refresh(),
    subscriptions() {
      const bound = catalogue.bindings().map(({ binding }) => binding.topic);
      return [...new Set([...NATIVE_FILTERS, ...bound])];
    },
    async reportOversize({ clientId, bytes }) {
      const detail = `client ${clientId ?? '(not yet named)'} announced a packet of ${bytes} bytes and was disconnected`;
      const payload = new Uint8Array();
      const refusals = [{ topic: '', reason: 'packet-too-large', detail, payload }];
      await committer.submit({
        node: '',
        receivedAt: clock.now(),
        topic: '',
        payload,
        readings: [],
        refusals,
      });
    },
  };
}

/** What a message says, by node. Empty when it is none of ours. */
function readMessage(message: InboundMessage, catalogue: Catalogue): readonly Draft[] {
  const topic = topicKind(message.topic);
  switch (topic.kind) {
    case 'readings': {
      const { node } = topic;
      if (isTooLarge(message)) return [tooLarge(node, message)];
      return [readReadings(node, message, (name) => catalogue.channel(node, name))];
    }
    case 'status': {
      if (isTooLarge(message)) return [tooLarge(topic.node, message)];
      const draft = readStatus(topic.node, message);
      return draft ? [draft] : [];
    }
    case 'foreign':
    case 'unknown': {
      const bound = readForeign(message, catalogue);
      if (topic.kind === 'foreign' || bound.length > 0) return bound;
      return [refusedDraft(topic.node, refused('unknown-topic', unknownTopicDetail(message.topic)))];
    }
    default:
      return topic satisfies never;
  }
}

/** Foreign payloads are read only where a binding asks for them; the rest of the traffic is not our business. */
function readForeign(message: InboundMessage, catalogue: Catalogue): readonly Draft[] {
  const bound = catalogue.bindings().filter(({ filter }) => filterMatches(filter, message.topic));
  const [first] = bound;
  if (first && isTooLarge(message)) return [tooLarge(boundNode(first, message.topic), message)];
  return bound.map((ready) => readThrough(ready, message, catalogue.channel));
}

function isTooLarge({ payload }: InboundMessage): boolean {
  return payload.length > MOST_PAYLOAD_BYTES;
}

function tooLarge(node: string, { payload }: InboundMessage): Draft {
  const detail = `${payload.length} bytes, at most ${MOST_PAYLOAD_BYTES} are taken: send several payloads`;
  return refusedDraft(node, refused('payload-too-large', detail));
}

function unknownTopicDetail(topic: string): string {
  return `"${topic.slice(0, 100)}" is neither soakwatch/<node>/readings nor soakwatch/<node>/status`;
}
