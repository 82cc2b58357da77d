import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';
import { probeHeatWords, trustText } from '../words/probe-heat.ts';
import { channelLabel } from './channels.ts';

interface TrustProps {
  readonly firing: FiringDetail;
  readonly unit: DisplayUnit;
}

/** The ± of each watched channel and the hours that its wire was too hot: on the screen and on paper. */
export function Trust({ firing, unit }: TrustProps) {
  const { api, feed } = useShell();
  const { answer } = useAnswer(`${firing.id} ${firing.status}`, () => api.firingProbes(firing.id));
  // A record without its ± is still a record: what could not be asked is left out.
  if (answer.state !== 'here' || answer.value.length === 0) return null;
  const channels = feed.state.value?.channels;
  return (
    <section class="firing-section" aria-labelledby="trust-head">
      <h2 id="trust-head">{probeHeatWords.head}</h2>
      <dl class="trust-list">
        {answer.value.map((probe) => {
          const channel = channels?.get(probe.uncertainty.channel);
          return (
            <div key={probe.uncertainty.channel}>
              <dt class="trust-name">{channel ? channelLabel(channel) : firingWords.channelAway}</dt>
              <dd class="trust-said">{trustText(probe, unit)}</dd>
            </div>
          );
        })}
      </dl>
    </section>
  );
}
