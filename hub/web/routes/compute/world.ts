import type { Archive } from '../../../archive/types.ts';
import type { Furnace } from '../../../contract/shop.ts';
import { type SteelBook, steelBook } from '../../../watch/steel-book.ts';
import { need } from '../need.ts';

/** What a computation may know of this shop: its own steels, and what its furnaces were fitted to. */
export interface World {
  readonly steels: SteelBook;
  /** @throws WatchError `not-found` */
  furnace(id: string): Furnace;
}

export function worldOf(archive: Archive): World {
  return { steels: steelBook(archive), furnace: (id) => need(archive.furnace(id), 'furnace', id) };
}
