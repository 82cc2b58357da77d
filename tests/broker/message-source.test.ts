import { createEmbeddedBroker } from '../../hub/broker/embedded.ts';
import { createExternalBroker } from '../../hub/broker/external.ts';
import type { MessageSource } from '../../hub/broker/types.ts';
import { systemClock } from '../../hub/time/clock.ts';
import { messageSourceContract, type Rig } from './message-source.contract.ts';
import { startMosquitto } from './mosquitto.ts';
import { startRelay } from './relay.ts';

/** Listeners for the PUBACKs that a relay sees. */
function ackTap() {
  const listeners = new Set<() => void>();
  return {
    onAck: (listener: () => void) => void listeners.add(listener),
    onPacket: ({ cmd }: { cmd?: string }) => {
      if (cmd === 'puback') for (const listener of listeners) listener();
    },
  };
}

/** The embedded broker acknowledges to the nodes: the relay stands between them and it. */
async function embeddedRig(): Promise<Rig> {
  const tap = ackTap();
  let port = 0;
  const relay = await startRelay({ target: () => port, direction: 'to-client', onPacket: tap.onPacket });
  const broker = createEmbeddedBroker({
    bind: '127.0.0.1',
    port: 0,
    maxPacketBytes: 4 * 1024 * 1024,
    clock: systemClock,
  });
  const source: MessageSource = {
    ...broker,
    async start(accept) {
      const started = await broker.start(accept);
      port = Number(new URL(started.address).port);
      return started;
    },
  };
  return {
    source,
    url: () => `mqtt://127.0.0.1:${relay.port}`,
    onAck: tap.onAck,
    async stop() {
      await source.stop();
      await relay.stop();
    },
  };
}

/** With mosquitto it is the hub that acknowledges to the broker: the relay stands between those two. */
async function mosquittoRig(): Promise<Rig> {
  const tap = ackTap();
  const mosquitto = await startMosquitto();
  const relay = await startRelay({
    target: () => mosquitto.port,
    direction: 'to-broker',
    onPacket: tap.onPacket,
  });
  const source = createExternalBroker({
    url: `mqtt://127.0.0.1:${relay.port}`,
    clientId: 'soakwatch-hub-contract',
    subscriptions: () => ['soakwatch/+/readings', 'soakwatch/+/status'],
    clock: systemClock,
    reconnectMs: { first: 20, longest: 100 },
  });
  return {
    source,
    url: () => `mqtt://127.0.0.1:${mosquitto.port}`,
    onAck: tap.onAck,
    async stop() {
      await source.stop();
      await relay.stop();
      await mosquitto.stop();
    },
  };
}

messageSourceContract('the embedded broker', embeddedRig, { brokerOutlivesSource: false });
messageSourceContract('mosquitto', mosquittoRig, { brokerOutlivesSource: true });
