import type { Furnace } from '../contract/shop.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import type { Archive } from './types.ts';

/** `fit` and `gas` are JSON documents. */
type FurnaceRow = Omit<Furnace, 'archived' | 'fit' | 'gas'> & {
  archived: number;
  fit: string | null;
  gas: string | null;
};

const COLUMNS =
  'id, name, kind, rated_celsius AS ratedCelsius, note, fit, gas, archived, created_at AS createdAt';

function toFurnace(row: FurnaceRow): Furnace {
  const fit = row.fit === null ? null : fromJson<Furnace['fit']>(row.fit);
  const gas = row.gas === null ? null : fromJson<Furnace['gas']>(row.gas);
  return { ...row, fit, gas, archived: row.archived === 1 };
}

function gasText({ gas }: Furnace): string | null {
  return gas === null ? null : JSON.stringify(gas);
}

export function furnacePart({
  db,
  ids,
}: Context): Pick<Archive, 'furnaces' | 'furnace' | 'createFurnace' | 'saveFurnace'> {
  const all = db.prepare<[], FurnaceRow>(`SELECT ${COLUMNS} FROM furnaces ORDER BY created_at, id`);
  const one = db.prepare<[string], FurnaceRow>(`SELECT ${COLUMNS} FROM furnaces WHERE id = ?`);
  const insert = db.prepare(
    `INSERT INTO furnaces (id, name, kind, rated_celsius, note, gas, archived, created_at, updated_at)
     VALUES (@id, @name, @kind, @ratedCelsius, @note, @gas, 0, @createdAt, @createdAt)`,
  );
  const update = db.prepare(
    `UPDATE furnaces SET name = @name, kind = @kind, rated_celsius = @ratedCelsius, note = @note,
       fit = @fit, gas = @gas, archived = @archived, updated_at = @at WHERE id = @id`,
  );

  return {
    furnaces: () => all.all().map(toFurnace),
    furnace(id) {
      const row = one.get(id);
      return row ? toFurnace(row) : null;
    },
    createFurnace(draft, at) {
      const gas = draft.gas ?? null;
      const furnace: Furnace = { ...draft, id: ids(), fit: null, gas, archived: false, createdAt: at };
      insert.run({ ...furnace, gas: gasText(furnace) });
      return furnace;
    },
    saveFurnace(furnace, at) {
      const fit = furnace.fit === null ? null : JSON.stringify(furnace.fit);
      const { changes } = update.run({
        ...furnace,
        fit,
        gas: gasText(furnace),
        archived: Number(furnace.archived),
        at,
      });
      mustChange(changes, 'furnace', furnace.id);
      return furnace;
    },
  };
}
