import type { FiringJudgement } from '../../hub/contract/firing.ts';
import type { Segment } from '../../hub/contract/schedule.ts';
import { Shape } from '../parts/shape.tsx';
import { useShell } from '../shell.ts';
import { degrees, degreesDifference, temperature, unitNamed } from '../words/format.ts';
import { since, timeOfDay } from '../words/time.ts';
import { wallWords } from '../words/wall.ts';
import { shapeOf } from './alarm-order.ts';
import { glowAt } from './glow.ts';
import type { Lane } from './lane.ts';

/** The temperature against its target, with the glow strip beside it. */
export function HeatRow({ lane }: { readonly lane: Lane }) {
  const { feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const { heat } = lane;
  const celsius = heat.kind === 'measured' ? heat.celsius : null;
  return (
    <div class="heat-row">
      <GlowStrip celsius={celsius} />
      <p class="heat">
        {heat.kind === 'measured' && (
          <>
            <span class="value heat-value">{degrees(heat.celsius, unit)}</span>
            <span class="heat-unit">{`\u00a0${unitNamed(unit).label}`}</span>
          </>
        )}
        {heat.kind === 'measured' && feed.blind.value && feed.heardAt.value !== null && (
          <>
            {' '}
            <span class="last-known heat-old">{wallWords.lastKnown(timeOfDay(feed.heardAt.value))}</span>
          </>
        )}
        {heat.kind === 'last-known' && (
          <>
            <s class="value heat-value stale">{temperature(heat.celsius, unit)}</s>
            <span class="heat-old"> {wallWords.old(since(heat.at, feed.now.value))}</span>
          </>
        )}
        {heat.kind === 'none' && <span class="heat-old">{wallWords.noReading}</span>}
        {heat.kind === 'no-channel' && <span class="heat-old">{wallWords.noChannel}</span>}
        {lane.live && heat.kind === 'measured' && !feed.blind.value && (
          <span class="heat-target">
            {' '}
            {targetWords(lane.live.judgement, lane.live.firing.schedule.segments, unit)}
          </span>
        )}
      </p>
      {lane.alarm && <Shape of={shapeOf(lane.alarm)} />}
    </div>
  );
}

type Judged = Pick<FiringJudgement, 'targetCelsius' | 'segmentIndex'>;

function targetWords(judged: Judged, segments: readonly Segment[], unit: 'Cel' | '[degF]'): string {
  const segment = segments[judged.segmentIndex];
  if (judged.targetCelsius === null || segment === undefined) return '';
  const target = degrees(judged.targetCelsius, unit);
  return segment.kind === 'cool'
    ? wallWords.toTarget(target)
    : wallWords.ofTarget(target, degreesDifference(segment.toleranceCelsius, unit));
}

/** The colour steel has at this heat: trade information, narrow and framed, apart from the alarm hues. */
function GlowStrip({ celsius }: { readonly celsius: number | null }) {
  const glow = celsius === null ? null : glowAt(celsius);
  const name = glow === null ? wallWords.noReading : wallWords.glow(glow.name);
  return (
    <span
      class="glow"
      role="img"
      aria-label={name}
      title={name}
      style={{ backgroundColor: glow?.colour ?? 'transparent' }}
    />
  );
}
