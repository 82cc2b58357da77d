import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';
import { temperature } from '../words/format.ts';
import { dayAndTime, duration, since, timeOfDay } from '../words/time.ts';
import { channelLabel } from './channels.ts';
import { lastedSeconds } from './list.ts';
import { VerdictMark } from './verdict-mark.tsx';

interface FactsProps {
  readonly firing: FiringDetail;
  readonly unit: DisplayUnit;
}

/** What a firing was, in a dozen words: for the screen and for paper. */
export function FiringFacts({ firing, unit }: FactsProps) {
  const { feed } = useShell();
  const { judgement, schedule } = firing;
  const state = feed.state.value;
  const furnace = state?.furnaces.get(firing.furnaceId)?.name ?? '–';
  const watched = firing.watchedChannels.map((id) => {
    const channel = state?.channels.get(id);
    return channel ? channelLabel(channel) : firingWords.channelAway;
  });
  return (
    <dl class="facts">
      <Fact name={firingWords.verdict}>
        <VerdictMark verdict={judgement.verdict} />
      </Fact>
      <Fact name={firingWords.furnace}>{furnace}</Fact>
      <Fact name={firingWords.schedule}>{firingWords.version(schedule.name, schedule.version)}</Fact>
      <Fact name={firingWords.started}>{dayAndTime(firing.startedAt)}</Fact>
      <Fact name={firingWords.ended}>{endText(firing)}</Fact>
      <Fact name={firingWords.lasted}>{duration(lastedSeconds(firing, feed.now.value))}</Fact>
      <Fact name={firingWords.peak}>{peakText(firing, unit)}</Fact>
      <Fact name={firingWords.soak}>{duration(soakOf(firing))}</Fact>
      <Fact name={firingWords.watched}>{watched.join(', ')}</Fact>
    </dl>
  );
}

/** What is going on now, while the firing runs. */
export function RunningNow({ firing, unit }: FactsProps) {
  const { feed } = useShell();
  const { judgement } = firing;
  if (firing.status !== 'running') return null;
  const measured =
    judgement.measuredCelsius === null
      ? measuredBlind(judgement.blindSince, feed.now.value)
      : temperature(judgement.measuredCelsius, unit);
  return (
    <dl class="facts running-now">
      <Fact name={firingWords.nextMove}>
        <span class="value">{judgement.nextMove.text}</span>
      </Fact>
      <Fact name={firingWords.measured}>
        <span class="value">{measured}</span>
      </Fact>
      {judgement.firingEndsAt !== null && (
        <Fact name={firingWords.endsAbout}>
          <span class="value">{timeOfDay(judgement.firingEndsAt)}</span>
        </Fact>
      )}
    </dl>
  );
}

function Fact(props: { readonly name: string; readonly children: preact.ComponentChildren }) {
  return (
    <div>
      <dt>{props.name}</dt>
      <dd>{props.children}</dd>
    </div>
  );
}

function measuredBlind(blindSince: number | null, nowMs: number): string {
  return blindSince === null ? firingWords.noReading : firingWords.blindSince(since(blindSince, nowMs));
}

function endText(firing: FiringDetail): string {
  if (firing.endedAt === null) return firingWords.running;
  const ended = dayAndTime(firing.endedAt);
  return firing.status === 'abandoned' ? `${ended}, ${firingWords.abandoned}` : ended;
}

function peakText(firing: FiringDetail, unit: DisplayUnit): string {
  const peaks = firing.judgement.segments.flatMap((segment) =>
    segment.peakCelsius === null ? [] : [segment.peakCelsius],
  );
  return peaks.length === 0 ? '–' : temperature(Math.max(...peaks), unit);
}

function soakOf(firing: FiringDetail): number {
  return firing.judgement.segments.reduce((sum, segment) => sum + segment.soakSeconds, 0);
}
