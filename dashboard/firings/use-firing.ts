import { useEffect, useRef, useState } from 'preact/hooks';
import type { Alarm } from '../../hub/contract/alarm.ts';
import type { FiringDetail, Note } from '../../hub/contract/firing.ts';
import type { LiveFiring } from '../../hub/contract/live.ts';
import { useShell } from '../shell.ts';

/** Everything a firing's page shows beside the readings. */
export interface FiringFolder {
  readonly firing: FiringDetail;
  readonly alarms: readonly Alarm[];
  readonly notes: readonly Note[];
}

export interface KnownFiring {
  /** Null until the first answer; afterwards the last that was known, also when the hub falls silent. */
  readonly folder: FiringFolder | null;
  readonly error: unknown;
  readonly reload: () => void;
}

/** Events come with the whole detail alone: while a firing runs it is asked for this often. */
const PULSE_MS = 10_000;
const MOST_ALARMS = 500;

/** A firing with its alarms and notes; follows the live feed while it runs. Mount anew for another id. */
export function useFiring(id: string): KnownFiring {
  const { api, feed } = useShell();
  const [folder, setFolder] = useState<FiringFolder | null>(null);
  const [error, setError] = useState<unknown>(null);
  const [round, setRound] = useState(0);
  const asking = useRef(0);
  const state = feed.state.value;
  const live = state?.firings.get(id);
  const alarmsNow = [...(state?.alarms.values() ?? [])].filter((alarm) => alarm.firingId === id);
  const pulse = live
    ? `${live.judgement.segmentIndex}/${Math.floor(feed.now.value / PULSE_MS)}`
    : 'not running';
  const fresh = `${pulse} ${alarmsNow.map((alarm) => `${alarm.id}${alarm.state}`).join()}`;

  // freshness and round say when to ask again
  useEffect(() => {
    asking.current += 1;
    const mine = asking.current;
    const isNewest = () => mine === asking.current;
    Promise.all([
      api.firing(id),
      api.listAlarms({ firingId: id, state: 'all', limit: MOST_ALARMS }),
      api.listNotes(id),
    ]).then(
      ([firing, alarms, notes]) => {
        if (!isNewest()) return;
        setFolder({ firing, alarms, notes });
        setError(null);
      },
      (fault: unknown) => isNewest() && setError(fault),
    );
  }, [id, fresh, round]);

  const now = folder && { ...folder, firing: withLive(folder.firing, live) };
  return { folder: now, error, reload: () => setRound((count) => count + 1) };
}

/**
 * The detail with the live judgement over it. The feed carries no events, so those stay as they were asked for;
 * so do title and note, which this page may have changed a moment before the feed tells of it.
 */
export function withLive(firing: FiringDetail, live: LiveFiring | undefined): FiringDetail {
  if (live === undefined || live.judgement.judgedTo < firing.judgement.judgedTo) return firing;
  return {
    ...firing,
    ...live.firing,
    title: firing.title,
    note: firing.note,
    judgement: { ...live.judgement, events: firing.judgement.events },
  };
}
