import { useEffect, useState } from 'preact/hooks';
import type { TimeAboveLimit } from '../../hub/contract/probe.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { useShell } from '../shell.ts';
import { aboveEverText, probeHeatWords } from '../words/probe-heat.ts';

/** The hub counts in portions; a page asks for so many and then says that there is more. */
const MOST_ASKED = 20;

/** Hours above the limit over all that a channel ever sent. */
export function TimeAbove({ channelId, unit }: { readonly channelId: string; readonly unit: DisplayUnit }) {
  const { api } = useShell();
  const [above, setAbove] = useState<TimeAboveLimit | null>(null);
  useEffect(() => {
    let current = true;
    const count = async () => {
      for (let asked = 0; asked < MOST_ASKED; asked += 1) {
        const answer = await api.setup.timeAbove(channelId);
        if (!current) return;
        setAbove(answer);
        if (answer.complete) return;
      }
    };
    // A count that fails is left out: the form beside it is what matters, and it says its own failures.
    count().catch(() => undefined);
    return () => {
      current = false;
    };
  }, [channelId]);
  if (above === null) return null;
  const said = aboveEverText(above, unit);
  const none = above.reason?.code === 'no-size' ? probeHeatWords.noSize : (above.reason?.message ?? '');
  return <p class="aside">{said ?? none}</p>;
}
