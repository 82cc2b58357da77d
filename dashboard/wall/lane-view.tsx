import type { LiveFiring } from '../../hub/contract/live.ts';
import { words } from '../../hub/contract/words/words.ts';
import { useShell } from '../shell.ts';
import { temperature, unbroken } from '../words/format.ts';
import { clockDuration, timeOfDay } from '../words/time.ts';
import { wallWords } from '../words/wall.ts';
import { HeatRow } from './heat-row.tsx';
import { isActNow, type Lane } from './lane.ts';
import { IdleActions, RunningActions } from './lane-actions.tsx';
import { LaneChart } from './lane-chart.tsx';

/** One furnace across the screen: its words at the left, its chart, its buttons at the right edge. */
export function LaneView({ lane }: { readonly lane: Lane }) {
  const { furnace, live, alarm } = lane;
  const { feed } = useShell();
  const hotAbove = feed.state.value?.shop.settings.hotAboveCelsius ?? 100;
  const isHot = lane.heat.kind === 'measured' && lane.heat.celsius > hotAbove;
  const mark = alarm ? ` lane-${alarm.priority}` : '';
  return (
    <section class={`lane ${live ? 'lane-running' : 'lane-idle'}${mark}`} aria-label={furnace.name}>
      <div class="lane-words">
        <p class="lane-name">
          <strong>{furnace.name}</strong>
          {live ? <Progress live={live} /> : <span>{isHot ? wallWords.idleHot : wallWords.idle}</span>}
        </p>
        {live && <Move live={live} />}
        <HeatRow lane={lane} />
        {live && <CoreLine live={live} />}
      </div>
      {live && <LaneChart key={live.firing.id} lane={lane} live={live} />}
      {live ? <RunningActions furnace={furnace} live={live} /> : <IdleActions furnace={furnace} />}
    </section>
  );
}

function Move({ live }: { readonly live: LiveFiring }) {
  const { feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const { code, params } = live.judgement.nextMove;
  return (
    <p class={isActNow(code) ? 'move move-now' : 'move'}>
      <span class="value">
        {unbroken(words(feed.state.value?.shop.settings.language ?? 'en').nextMove(code, params, unit))}
      </span>
    </p>
  );
}

/** The middle of the slowest piece, and that the soak clock goes by it. */
function CoreLine({ live: { judgement } }: { readonly live: LiveFiring }) {
  const { feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const slowest = judgement.pieces.find(({ part }) => part !== 'quickest');
  if (slowest === undefined) return null;
  const { mark, coreCelsius } = slowest;
  const core =
    coreCelsius === null ? wallWords.coreUnknown(mark) : wallWords.core(mark, temperature(coreCelsius, unit));
  return <p class="lane-core">{core}</p>;
}

function Progress({ live }: { readonly live: LiveFiring }) {
  const { firing, judgement } = live;
  const { segments, name } = firing.schedule;
  const segment = segments[judgement.segmentIndex];
  const parts = [
    segment?.kind === 'soak' && judgement.soakSeconds !== null
      ? wallWords.soakClock(clockDuration(judgement.soakSeconds), clockDuration(segment.durationSeconds))
      : segment && wallWords.segment(segment.kind, judgement.segmentIndex, segments.length),
    judgement.firingEndsAt === null ? undefined : wallWords.endsAt(timeOfDay(judgement.firingEndsAt)),
  ];
  return (
    <>
      <span class="lane-schedule">{name}</span>
      <span class="lane-progress">{parts.filter((part) => part !== undefined).join(' · ')}</span>
    </>
  );
}
