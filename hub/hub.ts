import { randomUUID } from 'node:crypto';
import { lookup } from 'node:dns/promises';
import type { IncomingMessage } from 'node:http';
import { join } from 'node:path';
import type { Duplex } from 'node:stream';
import type { Logger } from 'pino';
import { openArchive } from './archive/open.ts';
import type { Archive } from './archive/types.ts';
import { createEmbeddedBroker } from './broker/embedded.ts';
import { createExternalBroker } from './broker/external.ts';
import type { MessageSource } from './broker/types.ts';
import { createCommitter } from './intake/committer.ts';
import { createIntake, type Intake } from './intake/intake.ts';
import { HUB_DEAD, hubTopic } from './notify/beacon.ts';
import { createNotifyDesk } from './notify/desk.ts';
import { Notifier } from './notify/notifier.ts';
import { createServiceManager } from './notify/service-manager.ts';
import type { HubSettings } from './settings.ts';
import type { Clock } from './time/clock.ts';
import { ChangeBus } from './watch/changes.ts';
import { Watch } from './watch/watch.ts';
import { createApp } from './web/app.ts';
import { Feed } from './web/feed.ts';
import { startWebServer } from './web/server.ts';

export const VERSION = '0.1.0';
/** A connection that announces a larger packet is closed: aedes itself knows no bound. */
const MOST_PACKET_BYTES = 4 * 1024 * 1024;
/** A judge that has failed is told to every wall for this long after its last failure. */
const FAULT_SHOWN_MS = 60_000;

interface HubParts {
  readonly settings: HubSettings;
  readonly clock: Clock;
  readonly log: Logger;
  readonly dashboardDir: string;
}

export interface Hub {
  readonly wallUrl: string;
  readonly mqttAddress: string;
  stop(): Promise<void>;
}

/** The composition root: builds the parts, hands them to each other, stops them in reverse order. */
export async function startHub(parts: HubParts): Promise<Hub> {
  const { settings, clock, log } = parts;
  const archive = openArchive({
    path: join(settings.dataDir, 'soakwatch.sqlite'),
    ids: randomUUID,
    simulated: settings.simulated,
    now: clock.now(),
  });
  const stops: (() => void | Promise<void>)[] = [() => archive.close()];
  const stop = async (): Promise<void> => {
    for (const undo of stops.splice(0).reverse()) await undo();
  };
  try {
    return await assemble(parts, archive, stops, stop);
  } catch (fault) {
    log.debug(fault, 'not started');
    await stop();
    throw fault;
  }
}

async function assemble(
  parts: HubParts,
  archive: Archive,
  stops: (() => void | Promise<void>)[],
  stop: () => Promise<void>,
): Promise<Hub> {
  const { settings, clock, log, dashboardDir } = parts;
  archive.forgetNodeStatus(clock.now());
  const faults = faultWatch(clock, log);
  const bus = new ChangeBus(faults.note);
  const healthy = () => archive.alive() && faults.judging();
  const notifier = new Notifier({
    archive,
    bus,
    clock,
    healthy,
    lookup: async (host) => (await lookup(host, { all: true })).map(({ address }) => address),
    jitter: Math.random,
    // Reaching people is no judge: that it fails must not stop the heart that says that judging works.
    onFault: (fault) => log.warn(fault, 'reaching people'),
  });
  const watch = new Watch({
    archive,
    clock,
    bus,
    newId: randomUUID,
    simulated: settings.simulated,
    onFault: faults.note,
    alsoFound: () => notifier.findings(),
  });
  const committer = createCommitter({
    archive,
    clock,
    // mqtt.js hands over one message at a time: waiting for more would only slow it down.
    ...(settings.brokerUrl === null ? {} : { windowMs: 0 }),
    onFault: faults.note,
  });
  const intake = createIntake({ archive, committer, clock, onFault: faults.note });
  stops.push(committer.onCommit((commit) => watch.committed(commit)));
  stops.push(() => committer.drain());
  watch.start();
  stops.push(() => watch.stop());

  const broker = openBroker(parts, archive, intake, () => notifier.settings.topicPrefix());
  stops.push(() => broker.source.stop());
  const { address } = await broker.source.start((message) => intake.accept(message));
  notifier.start((topic, payload, options) => broker.source.publish(topic, payload, options));
  stops.push(() => notifier.stop());

  const feed = new Feed({ archive, watch, bus, clock, epoch: randomUUID(), judging: faults.judging });
  feed.start();
  stops.push(() => feed.stop());
  const rules = { hostNames: settings.hostNames };
  const app = createApp(
    {
      archive,
      watch,
      bus,
      clock,
      notify: createNotifyDesk(notifier, archive, clock),
      catalogueChanged: () => {
        intake.refresh();
        broker.resubscribe();
      },
      mqttAddress: () => address,
      dashboardDir,
      version: VERSION,
      judging: faults.judging,
      onFault: (fault) => log.error(fault, 'a request failed'),
    },
    rules,
  );
  const server = await startWebServer({
    app,
    feed,
    rules,
    bind: settings.bind,
    port: settings.httpPort,
    mqttStream: broker.handleStream,
    mostMqttBytes: MOST_PACKET_BYTES,
  });
  stops.push(() => server.stop());
  const manager = createServiceManager({
    env: process.env,
    clock,
    healthy,
    pid: process.pid,
    onFault: (fault) => log.warn(fault, 'systemd-notify'),
  });
  await manager.ready();
  stops.push(() => manager.stopping());
  const host = settings.bind.includes(':') ? `[${settings.bind}]` : settings.bind;
  return { wallUrl: `http://${host}:${server.port}/`, mqttAddress: address, stop };
}

interface FaultWatch {
  note(fault: unknown): void;
  judging(): boolean;
}

/** A judge or listener that fails is logged, and the walls are told that nothing is being judged. */
function faultWatch(clock: Clock, log: Logger): FaultWatch {
  let last = Number.NEGATIVE_INFINITY;
  return {
    note(fault) {
      last = clock.now();
      log.error(fault, 'a judge failed');
    },
    judging: () => clock.now() - last > FAULT_SHOWN_MS,
  };
}

interface BrokerEnd {
  readonly source: MessageSource;
  readonly handleStream: ((stream: Duplex, request: IncomingMessage) => void) | null;
  resubscribe(): void;
}

/** The embedded broker, or a standard one by URL: the same intake either way. */
function openBroker(
  { settings, clock, log }: HubParts,
  archive: Archive,
  intake: Intake,
  topicPrefix: () => string,
): BrokerEnd {
  if (settings.brokerUrl === null) {
    const source = createEmbeddedBroker({
      bind: settings.bind,
      port: settings.mqttPort,
      maxPacketBytes: MOST_PACKET_BYTES,
      clock,
      onFault: (fault) => log.warn(fault, 'the broker did not take a message or a connection'),
      onOversize: (seen) => {
        intake
          .reportOversize(seen)
          .catch((fault: unknown) => log.error(fault, 'an oversize packet was not counted'));
      },
    });
    return {
      source,
      handleStream: (stream, request) => source.handleStream(stream, request),
      resubscribe: () => {},
    };
  }
  const source = createExternalBroker({
    url: settings.brokerUrl,
    // Stable and of this shop alone: the broker keeps our session under it while we are away.
    clientId: `soakwatch-${archive.shop().id}`,
    clock,
    subscriptions: () => intake.subscriptions(),
    lastWill: () => ({ topic: hubTopic(topicPrefix()), payload: HUB_DEAD }),
    onFault: (fault) => log.warn(fault, 'the broker connection'),
  });
  return { source, handleStream: null, resubscribe: () => source.resubscribe() };
}
