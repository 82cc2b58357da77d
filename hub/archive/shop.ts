import type { Shop } from '../contract/shop.ts';
import { ShopSettings } from '../contract/shop.ts';
import { type Context, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { Archive } from './types.ts';

interface ShopRow {
  id: string;
  simulated: number;
  settings: string;
}

/** The default settings fill what a settings document of an older version lacks. */
function toShop(row: ShopRow): Shop {
  return {
    id: row.id,
    simulated: row.simulated === 1,
    settings: ShopSettings.parse(JSON.parse(row.settings)),
  };
}

/**
 * The one shop of this archive, made at the first opening.
 *
 * @throws ArchiveError `simulated-mismatch`: simulated and real readings must never share an archive.
 */
export function shopPart(
  { db, ids }: Context,
  simulated: boolean,
  now: number,
): Pick<Archive, 'shop' | 'saveSettings'> {
  const read = db.prepare<[], ShopRow>('SELECT id, simulated, settings FROM shop');
  const create = db.prepare(
    'INSERT INTO shop (only, id, simulated, settings, created_at, updated_at) VALUES (1, ?, ?, ?, ?, ?)',
  );
  const save = db.prepare('UPDATE shop SET settings = ?, updated_at = ?');

  const kept = read.get();
  if (!kept) create.run(ids(), Number(simulated), JSON.stringify(ShopSettings.parse({})), now, now);
  else if ((kept.simulated === 1) !== simulated) {
    const [is, asked] = simulated ? ['a real', 'simulated'] : ['a simulated', 'real'];
    throw new ArchiveError(
      'simulated-mismatch',
      `this archive is ${is} shop's and was opened for ${asked} readings: choose another data folder`,
    );
  }

  function shop(): Shop {
    const row = read.get();
    if (!row) throw new ArchiveError('damaged', 'the archive has lost its shop row: restore a copy');
    return toShop(row);
  }
  return {
    shop,
    saveSettings(settings, at) {
      mustChange(save.run(JSON.stringify(ShopSettings.parse(settings)), at).changes, 'shop', '1');
      return shop();
    },
  };
}
