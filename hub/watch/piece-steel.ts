import type { PieceSteel } from '../contract/piece.ts';
import type { Steel } from '../physics/steel/own-steel.ts';
import { WatchError } from './errors.ts';
import type { SteelBook } from './steel-book.ts';

/**
 * The steel of a piece, with its certificate taken in and the shop's own name for it before the rest.
 *
 * @throws WatchError `bad-input`, `not-found`; PhysicsError for the composition
 */
export function steelOfPiece(
  book: SteelBook,
  { grade, title, certificateId, composition }: PieceSteel,
): Steel {
  const named = {
    ...(grade === null ? {} : { steel: grade }),
    ...(certificateId === null ? {} : { certificate: certificateId }),
    ...(composition === null ? {} : { composition }),
  };
  const certified = certificateId === null ? null : book.certifiedOf(named);
  if (grade !== null && certified !== null && book.need(grade).id !== certified.id) {
    const message = `this certificate is of ${certified.id}, and the piece is said to be ${grade}: give one of the two`;
    throw new WatchError('bad-input', message);
  }
  const steel = book.steelOf(named);
  return title === '' ? steel : { ...steel, title: `${title} (${steel.title})` };
}

/** Null where the steel of a piece cannot be computed with (any more). */
export function steelIfKnown(book: SteelBook, steel: PieceSteel): Steel | null {
  try {
    return steelOfPiece(book, steel);
  } catch {
    // Whatever is wrong with it, a list must still show the piece; the piece itself says what is wrong.
    return null;
  }
}

/** The same, worked out once for each steel: many pieces of a bench are of one bar. */
export function knownSteels(book: SteelBook): (steel: PieceSteel) => Steel | null {
  const known = new Map<string, Steel | null>();
  return (steel) => {
    const key = JSON.stringify(steel);
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = steelIfKnown(book, steel);
    known.set(key, made);
    return made;
  };
}
