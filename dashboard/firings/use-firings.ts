import { useEffect, useState } from 'preact/hooks';
import type { FiringSummary } from '../../hub/contract/firing.ts';
import { useShell } from '../shell.ts';
import { type FiringFilter, filterAddress, inOrder, nextAfter, PAGE_SIZE, queryOf } from './list.ts';

export interface FiringPages {
  /** Null until the first answer. */
  readonly rows: readonly FiringSummary[] | null;
  readonly error: unknown;
  readonly busy: boolean;
  /** False once the hub has no earlier firing of this choice. */
  readonly hasMore: boolean;
  readonly more: () => void;
}

interface Loaded {
  readonly rows: FiringSummary[] | null;
  readonly error: unknown;
  readonly after: string | null;
  readonly hasMore: boolean;
}

const NOTHING: Loaded = { rows: null, error: null, after: null, hasMore: false };

/** The list as far as it has been asked for. `freshness` changes when what was loaded may be outdated. */
export function useFirings(filter: FiringFilter, freshness: string): FiringPages {
  const { api } = useShell();
  const [loaded, setLoaded] = useState<Loaded>(NOTHING);
  const [busy, setBusy] = useState(false);
  const choice = filterAddress(filter);

  useEffect(() => setLoaded(NOTHING), [choice]);
  // the choice stands for the filter, freshness asks again
  useEffect(() => {
    let current = true;
    const newest = api.listFirings(queryOf(filter, null));
    // A firing that runs for weeks may have begun before everything on the first page, and belongs on top.
    const running =
      filter.status === ''
        ? api.listFirings(queryOf({ ...filter, status: 'running' }, null))
        : Promise.resolve([]);
    Promise.all([newest, running]).then(
      ([page, live]) => current && setLoaded((known) => merged(known, page, live)),
      (error: unknown) => current && setLoaded((known) => ({ ...known, error })),
    );
    return () => {
      current = false;
    };
  }, [choice, freshness]);

  const more = () => {
    setBusy(true);
    api
      .listFirings(queryOf(filter, loaded.after))
      .then(
        (page) => setLoaded((known) => extended(known, page)),
        (error: unknown) => setLoaded((known) => ({ ...known, error })),
      )
      .finally(() => setBusy(false));
  };
  return { rows: loaded.rows, error: loaded.error, busy, hasMore: loaded.hasMore, more };
}

/** A fresh first page over what is known. Rows that were running and are not listed as such are asked anew. */
function merged(known: Loaded, page: FiringSummary[], live: FiringSummary[]): Loaded {
  const isFirst = known.rows === null;
  const kept = (known.rows ?? []).filter((row) => row.status !== 'running');
  return {
    rows: inOrder([kept, page, live]),
    error: null,
    after: isFirst ? nextAfter(page) : known.after,
    hasMore: isFirst ? page.length === PAGE_SIZE : known.hasMore,
  };
}

function extended(known: Loaded, page: FiringSummary[]): Loaded {
  return {
    rows: inOrder([known.rows ?? [], page]),
    error: null,
    after: nextAfter(page) ?? known.after,
    hasMore: page.length === PAGE_SIZE,
  };
}
