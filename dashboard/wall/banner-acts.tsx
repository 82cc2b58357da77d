import { useState } from 'preact/hooks';
import type { Alarm } from '../../hub/contract/alarm.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { wallWords } from '../words/wall.ts';
import { wantsPress, wantsReset } from './alarm-order.ts';
import { standingOf } from './banner-list.tsx';
import { WallDialog } from './wall-dialog.tsx';

/** Who presses on the wall: the screen itself, as nobody signs in there. */
const BY = 'wall';

/** The one press that the leading alarm asks for, and what to do in full. */
export function BannerActs({ alarm }: { readonly alarm: Alarm }) {
  const [showsSteps, setShowsSteps] = useState(false);
  return (
    <div class="banner-acts">
      <OnePress alarm={alarm} />
      {!alarm.active && (
        <span class="banner-state">
          {alarm.state.startsWith('latched') ? wallWords.latched : wallWords.over}
        </span>
      )}
      <Button size="wall" onPress={() => setShowsSteps(true)}>
        {wallWords.steps}
      </Button>
      {showsSteps && (
        <WallDialog title={alarm.title} onClose={() => setShowsSteps(false)}>
          <p class="steps-message">{alarm.message}</p>
          <ol class="steps">
            {alarm.guidance.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p class="dialog-acts">
            <LinkButton size="wall" href={hrefTo({ view: 'alarms' })}>
              {wallWords.allAlarms}
            </LinkButton>
          </p>
        </WallDialog>
      )}
    </div>
  );
}

function OnePress({ alarm }: { readonly alarm: Alarm }) {
  const { api } = useShell();
  const press = useAction();
  const toReset = wantsReset(alarm);
  if (!toReset && !wantsPress(alarm)) return <span class="banner-state">{standingOf(alarm)}</span>;
  const go = () =>
    press.run(async () => {
      if (toReset) await api.alarms.reset(alarm.id, { by: BY });
      else await api.acknowledge(alarm.id, BY);
    });
  const name = toReset ? wallWords.resetName : wallWords.acknowledgeName;
  return (
    <>
      <Button size="wall" tone="main" busy={press.busy} name={name(alarm.title)} onPress={go}>
        {toReset ? wallWords.reset : wallWords.acknowledge}
      </Button>
      <ProblemNote error={press.error} />
    </>
  );
}
