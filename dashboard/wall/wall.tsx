import type { FeedState } from '../feed/state.ts';
import { LinkButton } from '../parts/button.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { shellWords } from '../words/parts.ts';
import { wallWords } from '../words/wall.ts';
import { Banner } from './banner.tsx';
import { FootView } from './foot-view.tsx';
import { lanesOf } from './lane.ts';
import { LaneView } from './lane-view.tsx';
import { useWallSizes } from './use-wall-sizes.ts';

/** The screen that is read from five metres: alarms, a lane a furnace, air and gas along the foot. */
export function Wall() {
  const { feed } = useShell();
  const state = feed.state.value;
  return state === null ? <main class="wall-starting">{shellWords.starting}</main> : <WallOf state={state} />;
}

function WallOf({ state }: { readonly state: FeedState }) {
  const { feed } = useShell();
  const lanes = lanesOf(state, feed.now.value);
  const running = lanes.filter((lane) => lane.live !== null).length;
  const sizes = useWallSizes(state.shop.settings, {
    runningLanes: running,
    bannerShown: state.alarms.size > 0,
  });
  return (
    <main class="wall">
      <Banner />
      <div class={`lanes lanes-${Math.min(running, 4)}`}>
        {lanes.length === 0 && <NoFurnaces />}
        {lanes.map((lane) => (
          <LaneView key={lane.furnace.id} lane={lane} />
        ))}
      </div>
      <div class="wall-foot">
        {sizes !== null && !sizes.held && (
          <p class="wall-note">{wallWords.lettersSmall(sizes.readableMetres.toFixed(1))}</p>
        )}
        <FootView />
      </div>
    </main>
  );
}

function NoFurnaces() {
  return (
    <section class="lane lane-none">
      <div class="lane-words">
        <p class="move">{wallWords.noFurnaces}</p>
        <p class="steps-message">{wallWords.noFurnacesLong}</p>
      </div>
      <div class="lane-acts">
        <LinkButton size="wall" href={hrefTo({ view: 'setup', section: '' })}>
          {wallWords.toSetup}
        </LinkButton>
      </div>
    </section>
  );
}
