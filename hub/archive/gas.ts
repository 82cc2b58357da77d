import type { GasChange } from '../contract/gas.ts';
import { type Context, fromJson } from './context.ts';
import type { GasCount, GasStore } from './gas-types.ts';

/** Old counts are of no use: the judge goes back four hours and keeps one an hour. */
const COUNTS_KEPT = 12;

/** Noted fills and the counts since. */
export function gasPart({ db, ids, write }: Context): GasStore {
  const columns = 'id, at, furnace_id AS furnaceId, kilograms, by, note';
  const list = db.prepare<[number], GasChange>(
    `SELECT ${columns} FROM gas_changes ORDER BY at DESC, id DESC LIMIT ?`,
  );
  const one = db.prepare<[string], GasChange>(`SELECT ${columns} FROM gas_changes WHERE id = ?`);
  const insert = db.prepare(
    `INSERT INTO gas_changes (id, at, furnace_id, kilograms, by, note)
     VALUES (@id, @at, @furnaceId, @kilograms, @by, @note)`,
  );
  const remove = db.prepare('DELETE FROM gas_changes WHERE id = ?');
  const forget = db.prepare('DELETE FROM gas_counts WHERE at >= ?');
  const keep = db.prepare(
    `INSERT INTO gas_counts (supply, at, count) VALUES (?, ?, ?)
     ON CONFLICT (supply, at) DO UPDATE SET count = excluded.count`,
  );
  const thin = db.prepare(
    `DELETE FROM gas_counts WHERE supply = @supply AND at NOT IN
       (SELECT at FROM gas_counts WHERE supply = @supply ORDER BY at DESC LIMIT ${COUNTS_KEPT})`,
  );
  const newest = db
    .prepare<[string, number], string>(
      'SELECT count FROM gas_counts WHERE supply = ? AND at <= ? ORDER BY at DESC LIMIT 1',
    )
    .pluck();
  return {
    gasChanges: (limit) => list.all(limit),
    addGasChange: (change) =>
      write(() => {
        const made: GasChange = { ...change, id: ids() };
        insert.run(made);
        forget.run(made.at);
        return made;
      }),
    removeGasChange: (id) =>
      write(() => {
        const there = one.get(id);
        if (there === undefined) return false;
        remove.run(id);
        forget.run(there.at);
        return true;
      }),
    keepGasCount: (supply, count) =>
      write(() => {
        keep.run(supply, count.atMs, JSON.stringify(count));
        thin.run({ supply });
      }),
    gasCount(supply, at) {
      const text = newest.get(supply, at);
      return text === undefined ? null : fromJson<GasCount>(text);
    },
  };
}
