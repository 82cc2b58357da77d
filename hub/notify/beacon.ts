import type { MessageSource } from '../broker/types.ts';
import type { Heartbeat, LightState } from '../contract/notify-light.ts';
import type { Clock } from '../time/clock.ts';

/**
 * MQTT out: what a light or a siren shows, and the heartbeat by which it knows that the hub lives. Topics below the
 * prefix: `light` (retained, JSON), `light/colour`, `light/flash`, `light/sound`, `light/words` (retained, one word or
 * number each, for devices that read no JSON), `heartbeat` (JSON, never retained: a stored one would look like life),
 * `hub` (retained: `watching`, `stopped`, or `dead` by last will where the broker is external).
 */

/** Missing so many heartbeats counts as dead. */
const MISSED_TO_DEAD = 3;

export const HUB_DEAD = 'dead';
export const hubTopic = (prefix: string): string => `${prefix}/hub`;

interface BeaconParts {
  readonly clock: Clock;
  readonly prefix: () => string;
  readonly everySeconds: () => number;
  readonly light: () => LightState;
  /** False: nothing is judged. Then the heart stops, so that the light tells of it. */
  readonly healthy: () => boolean;
  readonly onFault: (fault: unknown) => void;
}

export interface Beacon {
  /** Says the state if it has changed, and the heartbeat when it is time. Called about every second. */
  tick(): void;
  stop(): Promise<void>;
}

export function createBeacon(parts: BeaconParts, publish: MessageSource['publish']): Beacon {
  const { clock, onFault } = parts;
  let said = '';
  let beatAt = Number.NEGATIVE_INFINITY;
  let prefix = parts.prefix();

  const say = (topic: string, payload: string, retain = true): Promise<void> =>
    publish(`${prefix}/${topic}`, payload, { qos: 1, retain });
  const sayLight = async (light: LightState): Promise<void> => {
    await say('light', JSON.stringify(light));
    for (const [topic, payload] of plainTopics(light)) await say(topic, payload);
  };
  const beat = async (at: number, everySeconds: number): Promise<void> => {
    const heartbeat: Heartbeat = { at, everySeconds, deadAfterSeconds: everySeconds * MISSED_TO_DEAD };
    await say('hub', 'watching');
    await say('heartbeat', JSON.stringify(heartbeat), false);
  };

  return {
    tick() {
      const now = clock.now();
      if (prefix !== parts.prefix()) {
        void clear(prefix, publish).catch(onFault);
        prefix = parts.prefix();
        said = '';
      }
      const isTime = parts.healthy() && now - beatAt >= parts.everySeconds() * 1000;
      const light = parts.light();
      const { at: _, ...shown } = light;
      const text = JSON.stringify(shown);
      // Said again with each heartbeat: a broker that was restarted has forgotten it.
      if (text !== said || isTime) sayLight(light).catch(onFault);
      said = text;
      if (!isTime) return;
      beatAt = now;
      beat(now, parts.everySeconds()).catch(onFault);
    },
    stop: () => say('hub', 'stopped').catch(onFault),
  };
}

function plainTopics(light: LightState): readonly (readonly [string, string])[] {
  return [
    ['light/colour', light.colour],
    ['light/flash', String(light.flashHertz)],
    ['light/sound', light.sound],
    ['light/words', light.words],
  ];
}

/** An empty retained message takes a stored one away (MQTT 3.1.1, 3.3.1.3): no old light stays on. */
async function clear(prefix: string, publish: MessageSource['publish']): Promise<void> {
  for (const topic of ['light', 'light/colour', 'light/flash', 'light/sound', 'light/words', 'hub'])
    await publish(`${prefix}/${topic}`, '', { qos: 1, retain: true });
}
