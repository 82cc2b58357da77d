import { useState } from 'preact/hooks';
import type { Alarm } from '../../hub/contract/alarm.ts';
import { isPutAside } from '../../hub/contract/alarm-groups.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Shape } from '../parts/shape.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { timeOfDay } from '../words/time.ts';
import { wallWords } from '../words/wall.ts';
import { byUrgency, shapeOf, wantsPress } from './alarm-order.ts';
import { WallDialog } from './wall-dialog.tsx';

/** How many further alarms are named; the rest is counted. */
const MOST_NAMED = 2;

/** How an alarm stands that asks for no press. What is set aside says so, and until when: it is never hidden. */
function standingOf(alarm: Alarm): string {
  if (alarm.state === 'out-of-service') return wallWords.outOfService;
  if (alarm.state === 'suppressed') return wallWords.heldBack;
  return alarm.shelf === null ? wallWords.seen : wallWords.shelvedUntil(timeOfDay(alarm.shelf.until));
}

/** A latched alarm that nobody has seen looks as it did while it held. */
function lookOf({ state }: Alarm): string {
  return state === 'latched-unacknowledged' ? 'unacknowledged' : state;
}

/** The most urgent alarm in words, shape and colour; the others by name; one press acknowledges. */
export function Banner() {
  const { feed } = useShell();
  const [first, ...others] = byUrgency(feed.state.value?.alarms.values() ?? []);
  if (first === undefined) return null;
  return (
    <section class={`banner banner-${first.priority} banner-${lookOf(first)}`} aria-label={wallWords.alarms}>
      {/* Announced when another alarm takes the first place, not whenever its numbers move. */}
      <p class="sr-only" role={first.priority === 'danger' ? 'alert' : 'status'} key={first.id}>
        {first.title}
      </p>
      <span class="banner-shape">
        <Shape of={shapeOf(first)} />
      </span>
      <div class="banner-words">
        <strong class="banner-title">{first.title}</strong>
        <p class="banner-message">{first.message}</p>
        <p class="banner-line">
          {wantsPress(first) && first.active && <strong class="banner-step">{first.guidance[0]}</strong>}
          <Others alarms={others} />
        </p>
      </div>
      <BannerActions alarm={first} />
    </section>
  );
}

function BannerActions({ alarm }: { readonly alarm: Alarm }) {
  const { api } = useShell();
  const [showsSteps, setShowsSteps] = useState(false);
  const press = useAction();
  const acknowledge = () =>
    press.run(async () => {
      await api.acknowledge(alarm.id, 'wall');
    });
  return (
    <div class="banner-acts">
      {wantsPress(alarm) ? (
        <Button
          size="wall"
          tone="main"
          busy={press.busy}
          name={wallWords.acknowledgeName(alarm.title)}
          onPress={acknowledge}
        >
          {wallWords.acknowledge}
        </Button>
      ) : (
        <span class="banner-state">{standingOf(alarm)}</span>
      )}
      {!alarm.active && <span class="banner-state">{wallWords.over}</span>}
      <Button size="wall" onPress={() => setShowsSteps(true)}>
        {wallWords.steps}
      </Button>
      <ProblemNote error={press.error} />
      {showsSteps && (
        <WallDialog title={alarm.title} onClose={() => setShowsSteps(false)}>
          <p class="steps-message">{alarm.message}</p>
          <ol class="steps">
            {alarm.guidance.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </WallDialog>
      )}
    </div>
  );
}

function Others({ alarms }: { readonly alarms: readonly Alarm[] }) {
  if (alarms.length === 0) return null;
  const named = alarms.slice(0, MOST_NAMED);
  return (
    <span class="banner-others">
      {wallWords.also}{' '}
      {named.map((alarm) => (
        <span class="banner-other" key={alarm.id}>
          <Shape of={shapeOf(alarm)} /> {alarm.title}
          {isPutAside(alarm) && ` (${standingOf(alarm)})`}
        </span>
      ))}
      {alarms.length > named.length && wallWords.others(alarms.length - named.length)}
    </span>
  );
}
