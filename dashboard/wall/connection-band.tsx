import { Button } from '../parts/button.tsx';
import { Shape } from '../parts/shape.tsx';
import { useShell } from '../shell.ts';
import { timeOfDaySeconds } from '../words/time.ts';
import { wallWords } from '../words/wall.ts';

/**
 * The loudest thing on the screen: nothing here is current. A wall that looks fine while it is blind is the
 * worst fault this product can have, so this outranks every alarm.
 */
export function ConnectionBand() {
  const { feed } = useShell();
  if (feed.blind.value) return <Blind />;
  if (!feed.judging.value) {
    return (
      <section class="band" role="alert">
        <Shape of="blind" />
        <div>
          <strong class="band-title">{wallWords.notJudging}</strong>
          <p>{wallWords.notJudgingLong}</p>
        </div>
        <Silence />
      </section>
    );
  }
  return null;
}

function Blind() {
  const { feed } = useShell();
  const heardAt = feed.heardAt.value;
  return (
    <section class="band band-blind" role="alert">
      <Shape of="blind" />
      <div>
        <strong class="band-title">{wallWords.notConnected}</strong>
        <p class="band-sentence">{wallWords.notCurrent}</p>
        <p>
          {heardAt === null ? wallWords.neverHeard : wallWords.lastHeard(timeOfDaySeconds(heardAt))}{' '}
          {feed.notUnderstood.value ? wallWords.pageOlder : wallWords.tryingAgain}
        </p>
      </div>
      <Silence />
    </section>
  );
}

function Silence() {
  const { sound } = useShell();
  if (sound.lossSilenced.value) return null;
  return (
    <Button size="wall" onPress={sound.silenceLoss}>
      {wallWords.silence}
    </Button>
  );
}
