import { useEffect, useState } from 'preact/hooks';
import type { Piece } from '../../hub/contract/piece.ts';
import type { PieceApi } from '../api/piece-client.ts';
import { useShell } from '../shell.ts';
import { type PieceFilter, pieceQuery, rowsOf } from './list.ts';

export interface PiecePages {
  /** Null until the first answer. */
  readonly pieces: readonly Piece[] | null;
  readonly error: unknown;
  readonly busy: boolean;
  readonly hasMore: boolean;
  readonly more: () => void;
}

interface Loaded {
  readonly pieces: readonly Piece[];
  readonly next: string | null;
}

/** The pieces as far as they have been asked for, anew for another filter. */
export function usePieces(filter: PieceFilter): PiecePages {
  const { api } = useShell();
  const [loaded, setLoaded] = useState<Loaded | null>(null);
  const [error, setError] = useState<unknown>(null);
  const [busy, setBusy] = useState(false);
  const choice = JSON.stringify(filter);
  useEffect(() => {
    let current = true;
    loadSome(api.pieces, filter, null).then(
      (page) => {
        if (!current) return;
        setLoaded(page);
        setError(null);
      },
      (fault: unknown) => current && setError(fault),
    );
    return () => {
      current = false;
    };
  }, [choice]);
  const more = () => {
    setBusy(true);
    loadSome(api.pieces, filter, loaded?.next ?? null)
      .then(
        (page) => setLoaded((known) => ({ ...page, pieces: [...(known?.pieces ?? []), ...page.pieces] })),
        setError,
      )
      .finally(() => setBusy(false));
  };
  const hasMore = loaded !== null && loaded.next !== null;
  return { pieces: loaded?.pieces ?? null, error, busy, hasMore, more };
}

/** Rows that make a press on "more" worth while. */
const ENOUGH = 20;

/** Pages one after the other until enough pieces of them fit the filter, or the hub has no more. */
async function loadSome(pieces: PieceApi, filter: PieceFilter, after: string | null): Promise<Loaded> {
  const fitting: Piece[] = [];
  let next = after;
  do {
    const page = await pieces.list(pieceQuery(filter, next));
    const fit = new Set(rowsOf(page.pieces, filter, new Map()).map(({ id }) => id));
    fitting.push(...page.pieces.filter(({ id }) => fit.has(id)));
    next = page.next;
  } while (next !== null && fitting.length < ENOUGH);
  return { pieces: fitting, next };
}
