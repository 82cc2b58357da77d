import { z } from 'zod';
import {
  NotifyLogEntry,
  NotifySettings,
  type NotifySettingsPatch,
  NotifyTestResult,
  NotifyWay,
  type NotifyWayDraft,
  type NotifyWayPatch,
} from '../../hub/contract/notify.ts';
import { API, type Send, type SendForNothing } from './request.ts';

export type WayInput = z.input<typeof NotifyWayDraft>;
export type WayChange = z.input<typeof NotifyWayPatch>;
export type NotifySettingsChange = z.input<typeof NotifySettingsPatch>;

/** The questions about reaching people. */
export interface NotifyApi {
  listWays(): Promise<NotifyWay[]>;
  createWay(draft: WayInput): Promise<NotifyWay>;
  changeWay(id: string, change: WayChange): Promise<NotifyWay>;
  removeWay(id: string): Promise<void>;
  test(id: string): Promise<NotifyTestResult>;
  settings(): Promise<NotifySettings>;
  changeSettings(change: NotifySettingsChange): Promise<NotifySettings>;
  /** The newest first. */
  log(): Promise<NotifyLogEntry[]>;
}

export function createNotifyApi(send: Send, sendForNothing: SendForNothing): NotifyApi {
  const ways = `${API}/notify/ways`;
  const settings = `${API}/notify/settings`;
  const one = (id: string) => `${ways}/${encodeURIComponent(id)}`;
  return {
    listWays: () => send({ method: 'GET', path: ways }, z.array(NotifyWay)),
    createWay: (body) => send({ method: 'POST', path: ways, body }, NotifyWay),
    changeWay: (id, body) => send({ method: 'PATCH', path: one(id), body }, NotifyWay),
    removeWay: (id) => sendForNothing({ method: 'DELETE', path: one(id) }),
    test: (id) => send({ method: 'POST', path: `${one(id)}/test` }, NotifyTestResult),
    settings: () => send({ method: 'GET', path: settings }, NotifySettings),
    changeSettings: (body) => send({ method: 'PATCH', path: settings, body }, NotifySettings),
    log: () => send({ method: 'GET', path: `${API}/notify/log` }, z.array(NotifyLogEntry)),
  };
}
