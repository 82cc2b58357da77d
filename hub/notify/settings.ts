import type { Archive } from '../archive/types.ts';
import { KeptNotifySettings, type NotifySettings, type NotifySettingsPatch } from '../contract/notify.ts';
import { FieldError } from '../watch/errors.ts';
import { type Network, readNetwork } from './guard.ts';
import { newPushKeys, type PushKeyPair } from './push.ts';
import { originOf } from './ways.ts';

/** Settings that all ways share, and the keys of Web Push. */
export interface SettingsDesk {
  kept(): KeptNotifySettings;
  shown(): NotifySettings;
  /** @throws FieldError */
  change(patch: NotifySettingsPatch): void;
  networks(): readonly Network[];
  topicPrefix(): string;
  timeZone(): string;
  pushKeys(): PushKeyPair;
}

const systemZone = (): string => new Intl.DateTimeFormat().resolvedOptions().timeZone;

export function createSettingsDesk(archive: Archive): SettingsDesk {
  let kept = KeptNotifySettings.parse(archive.notifyDocument('settings') ?? {});
  let networks = networksOf(kept);
  const keys = keysOf(archive);
  const topicPrefix = (): string => kept.topicPrefix ?? `soakwatch-out/${archive.shop().id.slice(0, 8)}`;
  const timeZone = (): string => kept.timeZone ?? systemZone();
  return {
    kept: () => kept,
    networks: () => networks,
    topicPrefix,
    timeZone,
    pushKeys: () => keys,
    shown() {
      const { pingUrl, ...rest } = kept;
      return {
        ...rest,
        pingOrigin: pingUrl === null ? null : originOf(pingUrl),
        topicPrefixInUse: topicPrefix(),
        timeZoneInUse: timeZone(),
        pushPublicKey: keys.publicKey,
      };
    },
    change(patch) {
      const named = Object.fromEntries(Object.entries(patch).filter(([, value]) => value !== undefined));
      const next = KeptNotifySettings.parse({ ...kept, ...named });
      networks = networksOf(next);
      archive.saveNotifyDocument('settings', next);
      kept = next;
    },
  };
}

function networksOf({ allowedNetworks }: KeptNotifySettings): readonly Network[] {
  return allowedNetworks.map((text, index) => {
    const read = readNetwork(text);
    if ('refusal' in read) throw new FieldError(`/allowedNetworks/${index}`, read.refusal);
    return read.network;
  });
}

/** Made once: every phone is bound to the public one. */
function keysOf(archive: Archive): PushKeyPair {
  const known = archive.notifyDocument('push-keys');
  if (known !== null) return known as PushKeyPair;
  const made = newPushKeys();
  archive.saveNotifyDocument('push-keys', made);
  return made;
}
