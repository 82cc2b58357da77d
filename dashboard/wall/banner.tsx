import type { Alarm } from '../../hub/contract/alarm.ts';
import { signalOf } from '../../hub/contract/alarm-signal.ts';
import { Shape } from '../parts/shape.tsx';
import { useShell } from '../shell.ts';
import { since } from '../words/time.ts';
import { wallWords } from '../words/wall.ts';
import { shapeOf, wantsPress } from './alarm-order.ts';
import { BannerActs } from './banner-acts.tsx';
import { bannerAlarms } from './banner-groups.ts';
import { BannerList } from './banner-list.tsx';

/** A latched alarm looks as it did while it held: unseen or seen. */
function lookOf({ state }: Alarm): string {
  if (state === 'latched-unacknowledged') return 'unacknowledged';
  return state === 'latched-acknowledged' ? 'acknowledged' : state;
}

/** How long one flash lasts, for the style sheet; an alarm that does not flash needs none. */
function flashStyle(alarm: Alarm): Record<string, string> {
  const { flash } = signalOf(alarm);
  return flash === null ? {} : { '--flash': `${1 / flash.hertz}s` };
}

/**
 * The most urgent action in words, shape and colour, what follows from the same cause and what else stands under
 * it; one press answers it.
 */
export function Banner() {
  const { feed } = useShell();
  const found = bannerAlarms(feed.state.value?.alarms.values() ?? []);
  if (found === null) return null;
  const { lead, followers, others } = found;
  const flood = feed.floodSince.value;
  return (
    <section class={`banner banner-${lead.priority} banner-${lookOf(lead)}`} aria-label={wallWords.alarms}>
      {/* Announced when another alarm takes the first place, not whenever its numbers move. */}
      <p class="sr-only" role={lead.priority === 'danger' ? 'alert' : 'status'} key={lead.id}>
        {lead.title}
      </p>
      <span class="banner-shape" style={flashStyle(lead)}>
        <Shape of={shapeOf(lead)} />
      </span>
      <div class="banner-words">
        <strong class="banner-title">{lead.title}</strong>
        <p class="banner-message">{lead.message}</p>
        <p class="banner-line">
          {wantsPress(lead) && lead.active && <strong class="banner-step">{lead.guidance[0]}</strong>}
          <BannerList head={wallWords.follows(followers.named.length + followers.more)} list={followers} />
          <BannerList head={wallWords.also} list={others} />
          {flood !== null && (
            <strong class="banner-flood">{wallWords.flood(since(flood, feed.now.value))}</strong>
          )}
        </p>
      </div>
      <BannerActs key={lead.id} alarm={lead} />
    </section>
  );
}
