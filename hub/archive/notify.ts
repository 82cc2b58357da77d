import type { NotifyLogEntry } from '../contract/notify.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import { MOST_NOTIFY_LOG, type NotifyDocument, type NotifyStore } from './notify-types.ts';

interface WayRow {
  id: string;
  document: string;
  createdAt: number;
}

/** Ways of reaching people, what they were told, and the log of it. */
export function notifyPart({ db, ids, write }: Context): NotifyStore {
  const ways = db.prepare<[], WayRow>(
    'SELECT id, document, created_at AS createdAt FROM notify_ways ORDER BY created_at, rowid',
  );
  const insert = db.prepare('INSERT INTO notify_ways (id, document, created_at) VALUES (?, ?, ?)');
  const update = db.prepare('UPDATE notify_ways SET document = ? WHERE id = ?');
  const remove = db.prepare('DELETE FROM notify_ways WHERE id = ?');
  const read = db.prepare<[string], string>('SELECT document FROM notify_documents WHERE name = ?').pluck();
  const keep = db.prepare(
    `INSERT INTO notify_documents (name, document) VALUES (?, ?)
     ON CONFLICT (name) DO UPDATE SET document = excluded.document`,
  );
  const log = db.prepare('INSERT INTO notify_log (at, entry) VALUES (?, ?)');
  const trim = db.prepare('DELETE FROM notify_log WHERE id <= ?');
  const lines = db.prepare<[number], { id: number; entry: string }>(
    'SELECT id, entry FROM notify_log ORDER BY id DESC LIMIT ?',
  );
  return {
    notifyWays: () => ways.all().map((row) => ({ ...row, document: fromJson(row.document) })),
    createNotifyWay(document, at) {
      const id = ids();
      insert.run(id, JSON.stringify(document), at);
      return id;
    },
    saveNotifyWay: (id, document) => mustChange(update.run(JSON.stringify(document), id).changes, 'way', id),
    deleteNotifyWay: (id) => remove.run(id).changes > 0,
    notifyDocument(name: NotifyDocument) {
      const text = read.get(name);
      return text === undefined ? null : fromJson(text);
    },
    saveNotifyDocument(name, document) {
      keep.run(name, JSON.stringify(document));
    },
    logNotify(entry) {
      write(() => {
        const { lastInsertRowid } = log.run(entry.at, JSON.stringify(entry));
        trim.run(Number(lastInsertRowid) - MOST_NOTIFY_LOG);
      });
    },
    notifyLog: (limit) =>
      lines.all(limit).map(({ id, entry }): NotifyLogEntry => ({ ...fromJson<NotifyLogEntry>(entry), id })),
  };
}
