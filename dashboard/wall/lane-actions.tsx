import { useState } from 'preact/hooks';
import type { LiveFiring } from '../../hub/contract/live.ts';
import type { Furnace } from '../../hub/contract/shop.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { wallWords } from '../words/wall.ts';
import { StartDialog } from './start-dialog.tsx';
import { WallDialog } from './wall-dialog.tsx';

interface RunningProps {
  readonly furnace: Furnace;
  readonly live: LiveFiring;
}

export function RunningActions({ furnace, live }: RunningProps) {
  const { api } = useShell();
  const [asksFinish, setAsksFinish] = useState(false);
  const press = useAction();
  const { firing, judgement } = live;
  const confirm = () =>
    press.run(async () => {
      await api.confirmSegment(firing.id, judgement.segmentIndex);
    });
  return (
    <div class="lane-acts">
      {judgement.waitsForConfirmation && (
        <Button size="wall" tone="main" busy={press.busy} onPress={confirm}>
          {wallWords.confirm}
        </Button>
      )}
      <Button size="wall" onPress={() => setAsksFinish(true)}>
        {wallWords.finish}
      </Button>
      <LinkButton
        size="wall"
        href={hrefTo({ view: 'firing', id: firing.id })}
        name={wallWords.moreName(furnace.name)}
      >
        {wallWords.more}
      </LinkButton>
      <ProblemNote error={press.error} />
      {asksFinish && (
        <FinishDialog furnace={furnace} firingId={firing.id} onClose={() => setAsksFinish(false)} />
      )}
    </div>
  );
}

export function IdleActions({ furnace }: { readonly furnace: Furnace }) {
  const [starts, setStarts] = useState(false);
  return (
    <div class="lane-acts">
      <Button
        size="wall"
        tone="main"
        name={wallWords.startName(furnace.name)}
        onPress={() => setStarts(true)}
      >
        {wallWords.start}
      </Button>
      {starts && <StartDialog furnace={furnace} onClose={() => setStarts(false)} />}
    </div>
  );
}

interface FinishProps {
  readonly furnace: Furnace;
  readonly firingId: string;
  readonly onClose: () => void;
}

function FinishDialog({ furnace, firingId, onClose }: FinishProps) {
  const { api } = useShell();
  const press = useAction();
  const finish = (abandoned: boolean) =>
    press.run(async () => {
      await api.finishFiring(firingId, abandoned);
      onClose();
    });
  return (
    <WallDialog title={wallWords.finishTitle(furnace.name)} onClose={onClose} closeWord={wallWords.keepOn}>
      <p class="steps-message">{wallWords.finishLong}</p>
      <div class="dialog-acts">
        <Button size="wall" tone="main" busy={press.busy} onPress={() => finish(false)}>
          {wallWords.finishYes}
        </Button>
        <Button size="wall" busy={press.busy} onPress={() => finish(true)}>
          {wallWords.abandon}
        </Button>
      </div>
      <ProblemNote error={press.error} />
    </WallDialog>
  );
}
