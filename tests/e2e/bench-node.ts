import mqtt, { type MqttClient } from 'mqtt';
import type { RealHub } from '../hub/real-hub.ts';

/** A node on the test bench: says its values once a second until told otherwise, over real MQTT. */
export class BenchNode {
  readonly #client: MqttClient;
  readonly #values = new Map<string, { unit: string; value: number }>();
  readonly #timer: NodeJS.Timeout;

  private constructor(client: MqttClient) {
    this.#client = client;
    this.#timer = setInterval(() => this.say(), 1000);
  }

  static async connect(hub: RealHub, port = hub.mqttPort): Promise<BenchNode> {
    const will = {
      topic: 'soakwatch/bench/status',
      payload: Buffer.from('offline'),
      qos: 1 as const,
      retain: true,
    };
    const url = `mqtt://127.0.0.1:${port}`;
    const client = await mqtt.connectAsync(url, { clientId: 'bench', will, reconnectPeriod: 200 });
    await client.publishAsync('soakwatch/bench/status', 'online', { qos: 1, retain: true });
    return new BenchNode(client);
  }

  /** Sets a value and says it at once; resolves when the hub has acknowledged, that is, stored it. */
  async set(name: string, value: number, unit = 'Cel'): Promise<void> {
    this.#values.set(name, { unit, value });
    await this.#client.publishAsync('soakwatch/bench/readings', this.#pack(), { qos: 1 });
  }

  /** Hands in what was buffered, in packs of a few hundred, each stored before the next. */
  async backfill(records: readonly object[]): Promise<void> {
    for (let from = 0; from < records.length; from += 200) {
      const pack = JSON.stringify(records.slice(from, from + 200));
      await this.#client.publishAsync('soakwatch/bench/readings', pack, { qos: 1 });
    }
  }

  say(): void {
    if (this.#values.size === 0 || !this.#client.connected) return;
    // A test may end while this is on its way.
    this.#client.publishAsync('soakwatch/bench/readings', this.#pack(), { qos: 1 }).catch(() => undefined);
  }

  async leave(): Promise<void> {
    clearInterval(this.#timer);
    await this.#client.endAsync(true);
  }

  #pack(): string {
    return JSON.stringify([...this.#values].map(([n, { unit, value }]) => ({ n, u: unit, v: value })));
  }
}

/** A shop with one forge and an oven, watched by the bench node, and one schedule. */
export async function furnishShop(
  hub: RealHub,
): Promise<{ forgeId: string; ovenId: string; scheduleId: string }> {
  await hub.api('PATCH', 'shop', { name: 'Test shop' });
  const forge = await hub.api('POST', 'furnaces', {
    name: 'Gas forge',
    kind: 'gas-forge',
    ratedCelsius: 1300,
  });
  const oven = await hub.api('POST', 'furnaces', { name: 'Oven', kind: 'electric-oven', ratedCelsius: 1150 });
  const temperature = { node: 'bench', quantity: 'temperature' };
  await hub.api('POST', 'channels', {
    ...temperature,
    name: 'forge',
    label: 'Forge chamber',
    furnaceId: forge.id,
  });
  await hub.api('POST', 'channels', {
    ...temperature,
    name: 'oven',
    label: 'Oven chamber',
    furnaceId: oven.id,
  });
  await hub.api('POST', 'channels', { node: 'bench', name: 'co', quantity: 'carbon-monoxide' });
  const schedule = await hub.api('POST', 'schedules', {
    name: 'Anneal 860',
    segments: [
      { kind: 'ramp', targetCelsius: 860, toleranceCelsius: 15 },
      { kind: 'soak', targetCelsius: 860, toleranceCelsius: 15, durationSeconds: 900 },
      { kind: 'cool', targetCelsius: 550, medium: 'ash' },
    ],
  });
  return { forgeId: forge.id, ovenId: oven.id, scheduleId: schedule.id };
}
