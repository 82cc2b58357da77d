import type { OwnSteel } from '../contract/own-steel.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import type { OwnSteelStore } from './own-steel-types.ts';

/** Composition and windows are JSON documents. */
type Row = Omit<OwnSteel, 'composition' | 'windows' | 'archived'> & {
  composition: string;
  windows: string;
  archived: number;
};

const SELECT = `SELECT id, name, composition, windows, note, archived, created_at AS createdAt,
  updated_at AS updatedAt FROM own_steels`;

function toSteel(row: Row): OwnSteel {
  return {
    ...row,
    composition: fromJson<OwnSteel['composition']>(row.composition),
    windows: fromJson<OwnSteel['windows']>(row.windows),
    archived: row.archived === 1,
  };
}

function toRow(steel: OwnSteel, key: string): Row & { key: string } {
  return {
    ...steel,
    key,
    composition: JSON.stringify(steel.composition),
    windows: JSON.stringify(steel.windows),
    archived: Number(steel.archived),
  };
}

export function ownSteelPart({
  db,
  ids,
}: Context): Pick<OwnSteelStore, 'ownSteels' | 'ownSteel' | 'createOwnSteel' | 'saveOwnSteel'> {
  const all = db.prepare<[], Row>(`${SELECT} ORDER BY name COLLATE NOCASE, id`);
  const one = db.prepare<[string], Row>(`${SELECT} WHERE id = ?`);
  const insert = db.prepare(
    `INSERT INTO own_steels (id, key, name, composition, windows, note, archived, created_at, updated_at)
     VALUES (@id, @key, @name, @composition, @windows, @note, @archived, @createdAt, @updatedAt)`,
  );
  const update = db.prepare(
    `UPDATE own_steels SET key = @key, name = @name, composition = @composition, windows = @windows,
       note = @note, archived = @archived, updated_at = @updatedAt WHERE id = @id`,
  );
  return {
    ownSteels: () => all.all().map(toSteel),
    ownSteel(id) {
      const row = one.get(id);
      return row ? toSteel(row) : null;
    },
    createOwnSteel(draft, key, at) {
      const steel: OwnSteel = { ...draft, id: ids(), archived: false, createdAt: at, updatedAt: at };
      insert.run(toRow(steel, key));
      return steel;
    },
    saveOwnSteel(steel, key) {
      mustChange(update.run(toRow(steel, key)).changes, 'steel', steel.id);
      return steel;
    },
  };
}
