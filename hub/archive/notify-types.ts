import type { NotifyLogEntry } from '../contract/notify.ts';

/** What the archive keeps for reaching people. The documents are the notifier's own; they hold secrets. */
export interface NotifyStore {
  /** Oldest first. */
  notifyWays(): readonly { readonly id: string; readonly document: unknown; readonly createdAt: number }[];
  createNotifyWay(document: unknown, at: number): string;
  saveNotifyWay(id: string, document: unknown): void;
  deleteNotifyWay(id: string): boolean;
  /** Null: never kept. */
  notifyDocument(name: NotifyDocument): unknown;
  saveNotifyDocument(name: NotifyDocument, document: unknown): void;
  /** Adds a line to the log, which keeps the newest `MOST_NOTIFY_LOG`. */
  logNotify(entry: Omit<NotifyLogEntry, 'id'>): void;
  /** The newest first. */
  notifyLog(limit: number): readonly NotifyLogEntry[];
}

export type NotifyDocument = 'settings' | 'state' | 'push-keys';
export const MOST_NOTIFY_LOG = 2000;
