import type {
  MillCertificate,
  MillCertificateDraft,
  OwnSteel,
  OwnSteelDraft,
} from '../contract/own-steel.ts';

/** The shop's own steels and the certificates of its bars. `key` is the name as it is compared. */
export interface OwnSteelStore {
  /** By name; those put away included. */
  ownSteels(): readonly OwnSteel[];
  ownSteel(id: string): OwnSteel | null;
  /** @throws ArchiveError `conflict` when another has this key */
  createOwnSteel(draft: OwnSteelDraft, key: string, at: number): OwnSteel;
  /** Writes everything but id and createdAt. @throws ArchiveError `conflict`, `not-found` */
  saveOwnSteel(steel: OwnSteel, key: string): OwnSteel;

  /** Of one steel by its id, or all; the newest first; those put away included. */
  certificates(steel?: string): readonly MillCertificate[];
  certificate(id: string): MillCertificate | null;
  /** @throws ArchiveError `conflict` when this steel has a certificate of this heat */
  createCertificate(steel: string, draft: MillCertificateDraft, at: number): MillCertificate;
  /** Writes everything but id, steel and createdAt. @throws ArchiveError `conflict`, `not-found` */
  saveCertificate(certificate: MillCertificate): MillCertificate;
}
