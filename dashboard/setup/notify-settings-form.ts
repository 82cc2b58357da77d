import { type NotifySettings, NotifySettingsPatch } from '../../hub/contract/notify.ts';
import { faultsOf } from '../parts/faults.ts';
import type { Checked } from './use-text-form.ts';

/** What all ways share, as texts. */
export type SharedTexts = Record<
  'timeZone' | 'contact' | 'networks' | 'prefix' | 'heartbeat' | 'pingUrl' | 'pingEvery',
  string
>;

export function sharedTexts(settings: NotifySettings): SharedTexts {
  return {
    timeZone: settings.timeZone ?? '',
    contact: settings.contact ?? '',
    networks: settings.allowedNetworks.join('\n'),
    prefix: settings.topicPrefix ?? '',
    heartbeat: String(settings.heartbeatSeconds),
    pingUrl: '',
    pingEvery: String(settings.pingEveryMinutes),
  };
}

const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());
const number = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text));

/** Faults by the contract's paths; an empty ping address leaves the one that is there. */
export function checkShared(texts: SharedTexts): Checked<NotifySettingsPatch> {
  const pingUrl = orNull(texts.pingUrl);
  const parsed = NotifySettingsPatch.safeParse({
    timeZone: orNull(texts.timeZone),
    contact: orNull(texts.contact),
    allowedNetworks: texts.networks
      .split(/[\n,;]/)
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    topicPrefix: orNull(texts.prefix),
    heartbeatSeconds: number(texts.heartbeat),
    pingEveryMinutes: number(texts.pingEvery),
    ...(pingUrl === null ? {} : { pingUrl }),
  });
  return parsed.success
    ? { value: parsed.data, faults: {} }
    : { value: null, faults: faultsOf(parsed.error.issues) };
}
