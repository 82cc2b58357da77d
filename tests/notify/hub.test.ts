import { connectAsync } from 'mqtt';
import { afterEach, describe, expect, it } from 'vitest';
import { startMosquitto } from '../broker/mosquitto.ts';
import { realHub, temporaryFolder } from '../hub/real-hub.ts';

const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

/** Listens to everything below the prefix until `topic` has said `text`. */
async function listening(port: number, prefix: string) {
  const client = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0 });
  closing.push(() => client.endAsync(true));
  const heard: string[] = [];
  let wake = (): void => {};
  client.on('message', (topic, payload) => {
    heard.push(`${topic.slice(prefix.length + 1)} ${payload.toString()}`);
    wake();
  });
  await client.subscribeAsync(`${prefix}/#`, { qos: 1 });
  return async (start: string): Promise<string> => {
    for (;;) {
      const found = heard.find((line) => line.startsWith(start));
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
  };
}

describe('the hub as it runs', () => {
  it('tells a light on its own broker that it watches', async () => {
    const folder = temporaryFolder();
    closing.push(folder.remove);
    const hub = await realHub(folder.path);
    closing.push(() => hub.stop());
    const { topicPrefixInUse } = await hub.api('GET', 'notify/settings');
    const hears = await listening(hub.mqttPort, topicPrefixInUse);
    expect(await hears('hub')).toBe('hub watching');
    expect(JSON.parse((await hears('light {')).slice(6))).toMatchObject({ state: 'quiet', colour: 'none' });
  });

  it('tells a light on a broker beside it that it stops, in the name of the shop', async () => {
    const mosquitto = await startMosquitto();
    closing.push(() => mosquitto.stop());
    const folder = temporaryFolder();
    closing.push(folder.remove);
    const hub = await realHub(folder.path, ['--broker', `mqtt://127.0.0.1:${mosquitto.port}`]);
    const { topicPrefixInUse } = await hub.api('GET', 'notify/settings');
    const hears = await listening(mosquitto.port, topicPrefixInUse);
    expect(await hears('hub')).toBe('hub watching');
    await hub.stop();
    expect(await hears('hub stopped')).toBe('hub stopped');
  });
});
