import { z } from 'zod';
import {
  MillCertificate,
  type MillCertificateDraft,
  type MillCertificatePatch,
  OwnSteel,
  type OwnSteelDraft,
  type OwnSteelPatch,
} from '../../hub/contract/own-steel.ts';
import { API, type Send, type SendForNothing } from './request.ts';

export type OwnSteelInput = z.input<typeof OwnSteelDraft>;
export type OwnSteelChange = z.input<typeof OwnSteelPatch>;
export type CertificateInput = z.input<typeof MillCertificateDraft>;
export type CertificateChange = z.input<typeof MillCertificatePatch>;

/** The shop's own steels and its mill certificates; the whole list is in `ComputeApi`. */
export interface SteelApi {
  create(draft: OwnSteelInput): Promise<OwnSteel>;
  change(id: string, change: OwnSteelChange): Promise<OwnSteel>;
  putAway(id: string): Promise<void>;
  /** Of a grade or an own steel, the newest first. */
  listCertificates(steel: string): Promise<MillCertificate[]>;
  createCertificate(steel: string, draft: CertificateInput): Promise<MillCertificate>;
  changeCertificate(id: string, change: CertificateChange): Promise<MillCertificate>;
  putCertificateAway(id: string): Promise<void>;
}

export function createSteelApi(send: Send, sendForNothing: SendForNothing): SteelApi {
  const steels = `${API}/steels`;
  const steel = (name: string) => `${steels}/${encodeURIComponent(name)}`;
  const certificate = (id: string) => `${API}/certificates/${encodeURIComponent(id)}`;
  return {
    create: (body) => send({ method: 'POST', path: steels, body }, OwnSteel),
    change: (id, body) => send({ method: 'PATCH', path: steel(id), body }, OwnSteel),
    putAway: (id) => sendForNothing({ method: 'DELETE', path: steel(id) }),
    listCertificates: (name) =>
      send({ method: 'GET', path: `${steel(name)}/certificates` }, z.array(MillCertificate)),
    createCertificate: (name, body) =>
      send({ method: 'POST', path: `${steel(name)}/certificates`, body }, MillCertificate),
    changeCertificate: (id, body) => send({ method: 'PATCH', path: certificate(id), body }, MillCertificate),
    putCertificateAway: (id) => sendForNothing({ method: 'DELETE', path: certificate(id) }),
  };
}
