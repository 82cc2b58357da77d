import type { z } from 'zod';
import { GasChange, type GasChangeDraft, GasView } from '../../hub/contract/gas.ts';
import { API, type Send, type SendForNothing } from './request.ts';

export type GasChangeInput = z.input<typeof GasChangeDraft>;

/** What the hub knows of the gas, and the changes of cylinders. */
export interface GasApi {
  view(): Promise<GasView>;
  note(change: GasChangeInput): Promise<GasChange>;
  takeBack(id: string): Promise<void>;
}

export function createGasApi(send: Send, sendForNothing: SendForNothing): GasApi {
  const changes = `${API}/gas/changes`;
  return {
    view: () => send({ method: 'GET', path: `${API}/gas` }, GasView),
    note: (body) => send({ method: 'POST', path: changes, body }, GasChange),
    takeBack: (id) => sendForNothing({ method: 'DELETE', path: `${changes}/${encodeURIComponent(id)}` }),
  };
}
