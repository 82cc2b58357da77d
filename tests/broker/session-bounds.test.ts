import type { AedesPublishPacket, Client, ConnectPacket } from 'aedes';
import { describe, expect, test } from 'vitest';
import {
  boundSessions,
  boundStore,
  boundSubscriptions,
  MOST_QUEUED,
  MOST_RETAINED,
  MOST_RETAINED_BYTES,
  MOST_SESSIONS,
  MOST_SUBSCRIPTIONS,
  type SessionStore,
} from '../../hub/broker/session-bounds.ts';

/** A store that counts what it is given to keep. */
function setUp() {
  const retained = new Set<string>();
  const queued: string[] = [];
  const store = {
    async storeRetained({ topic, payload }: AedesPublishPacket) {
      if (payload.length === 0) retained.delete(topic);
      else retained.add(topic);
    },
    async outgoingEnqueueCombi(subscriptions: readonly { readonly clientId: string }[]) {
      for (const { clientId } of subscriptions) queued.push(clientId);
    },
    async outgoingClearMessageId(client: { readonly id: string }) {
      const place = queued.indexOf(client.id);
      return place < 0 ? undefined : queued.splice(place, 1)[0];
    },
  };
  const bounded: SessionStore = store;
  boundStore(bounded);
  return { store: bounded, retained, queued };
}

const packet = (topic: string, bytes = 1) =>
  ({ topic, payload: Buffer.alloc(bytes) }) as unknown as AedesPublishPacket;
const client = () => ({}) as unknown as Client;

describe('retained messages', () => {
  test('of ever new topics are not kept for ever, those that are there go on', async () => {
    const { store, retained } = setUp();
    for (let index = 0; index <= MOST_RETAINED; index += 1) await store.storeRetained(packet(`t/${index}`));
    expect(retained.size).toBe(MOST_RETAINED);

    await store.storeRetained(packet('t/0', 0));
    await store.storeRetained(packet('t/new'));
    expect(retained.has('t/new')).toBe(true);
    expect(retained.size).toBe(MOST_RETAINED);
  });

  test('that are huge are not kept at all', async () => {
    const { store, retained } = setUp();
    await store.storeRetained(packet('huge', MOST_RETAINED_BYTES + 1));
    await store.storeRetained(packet('large', MOST_RETAINED_BYTES));

    expect([...retained]).toEqual(['large']);
  });
});

describe('the queue of a session', () => {
  test('is bounded for each client, and has room again when messages were delivered', async () => {
    const { store, queued } = setUp();
    const both = [{ clientId: 'gone' }, { clientId: 'here' }];
    for (let index = 0; index < MOST_QUEUED + 5; index += 1) {
      await store.outgoingEnqueueCombi(both, packet('t'));
      await store.outgoingClearMessageId({ id: 'here' }, {});
    }
    expect(queued.filter((id) => id === 'gone')).toHaveLength(MOST_QUEUED);

    await store.outgoingClearMessageId({ id: 'gone' }, {});
    await store.outgoingEnqueueCombi(both, packet('t'));
    expect(queued.filter((id) => id === 'gone')).toHaveLength(MOST_QUEUED);
  });
});

describe('sessions and subscriptions', () => {
  test('sessions that outlive their connection are for a bounded number of names', () => {
    const bound = boundSessions();
    const connect = (clientId: string): boolean => {
      const asked = { clean: false, clientId } as unknown as ConnectPacket;
      bound(client(), asked);
      return asked.clean === false;
    };

    for (let index = 0; index < MOST_SESSIONS; index += 1) expect(connect(`c${index}`)).toBe(true);
    expect(connect('one-more')).toBe(false);
    expect(connect('c0')).toBe(true);
    expect(connect('')).toBe(false);
  });

  test('a client has a bounded number of subscriptions', () => {
    const may = boundSubscriptions();
    const one = client();
    for (let index = 0; index < MOST_SUBSCRIPTIONS; index += 1) may(one, { topic: `t/${index}`, qos: 0 });

    expect(may(one, { topic: 't/more', qos: 0 })).toBe(false);
    expect(may(one, { topic: 't/0', qos: 1 })).toBe(true);
    expect(may(client(), { topic: 't/more', qos: 0 })).toBe(true);
  });
});
