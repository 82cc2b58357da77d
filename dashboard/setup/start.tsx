import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { FeedState } from '../feed/state.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo, NEW_SCHEDULE } from '../router.ts';
import { useShell } from '../shell.ts';
import { setupWords, startWords } from '../words/setup.ts';
import { ChannelDialog } from './channel-dialog.tsx';
import { CopyLine } from './copy-line.tsx';
import { FurnaceDialog } from './furnace-dialog.tsx';
import { publishLine, readAddress, readingsTopic } from './mqtt-line.ts';
import { OfferList } from './offer-list.tsx';
import { stepsDone } from './steps.ts';

const FIRST_READING = { node: 'my-node', channel: 'chamber', celsius: 861.5 };

/** From an empty shop to a firing in five steps, each with what it needs at hand. */
export function Start({ state }: { readonly state: FeedState }) {
  const { api } = useShell();
  const [adds, setAdds] = useState<'furnace' | 'channel' | null>(null);
  const { answer } = useAnswer('schedules', () => api.listSchedules());
  const schedules = answer.state === 'here' ? answer.value.length : null;
  const done = stepsDone(state, schedules);
  const watched = [...state.channels.values()].filter((channel) => channel.adopted).length;
  const furnaces = [...state.furnaces.values()].map((furnace) => furnace.name).join(', ');
  return (
    <>
      <p class="aside">{startWords.lead}</p>
      <ol class="first-steps">
        <Step index={1} title={startWords.connect} done={done.connect}>
          <Connect state={state} />
        </Step>
        <Step index={2} title={startWords.furnace} done={done.furnace}>
          <p>{startWords.furnaceLong}</p>
          {done.furnace && <p>{startWords.haveFurnaces(furnaces)}</p>}
          <p>
            <Button tone={done.furnace ? 'plain' : 'main'} onPress={() => setAdds('furnace')}>
              {startWords.furnace}
            </Button>
          </p>
        </Step>
        <Step index={3} title={startWords.adopt} done={done.adopt}>
          <p>{startWords.adoptLong}</p>
          <OfferList state={state} />
          {watched > 0 && <p>{startWords.taken(watched)}</p>}
        </Step>
        <Step index={4} title={startWords.channel} done={done.channel}>
          <p>{startWords.channelLong}</p>
          {done.channel && <p>{startWords.channelSkip}</p>}
          <div class="form-acts">
            <Button onPress={() => setAdds('channel')}>{startWords.byHand}</Button>
            <LinkButton href={hrefTo({ view: 'setup', section: 'bindings' })}>
              {startWords.foreign}
            </LinkButton>
          </div>
        </Step>
        <Step index={5} title={startWords.schedule} done={done.schedule === true}>
          <p>{startWords.scheduleLong}</p>
          {schedules !== null && schedules > 0 && <p>{startWords.haveSchedules(schedules)}</p>}
          <div class="form-acts">
            <LinkButton href={hrefTo({ view: 'schedule', id: NEW_SCHEDULE })}>
              {startWords.writeSchedule}
            </LinkButton>
            <LinkButton href={hrefTo({ view: 'wall' })}>{setupWords.toWall}</LinkButton>
          </div>
        </Step>
      </ol>
      {adds === 'furnace' && <FurnaceDialog furnace={null} onClose={() => setAdds(null)} />}
      {adds === 'channel' && <ChannelDialog channel={null} state={state} onClose={() => setAdds(null)} />}
    </>
  );
}

interface StepProps {
  readonly index: number;
  readonly title: string;
  readonly done: boolean;
  readonly children: ComponentChildren;
}

function Step({ index, title, done, children }: StepProps) {
  return (
    <li class={done ? 'step step-done' : 'step'}>
      <h2>
        <span class="step-box" aria-hidden="true">
          {done ? '✓' : index}
        </span>
        {title} <span class="step-state">{done ? startWords.done : startWords.open}</span>
      </h2>
      {children}
    </li>
  );
}

function Connect({ state }: { readonly state: FeedState }) {
  const { api } = useShell();
  const { answer } = useAnswer('about', () => api.setup.about());
  const names = [...state.nodes.values()]
    .filter((node) => node.lastHeardAt !== null)
    .map((node) => node.name)
    .join(', ');
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  if (answer.state === 'waiting') return <p role="status">{setupWords.asking}</p>;
  const address = readAddress(answer.value.mqtt);
  return (
    <>
      <p>{startWords.connectLong}</p>
      <dl class="facts facts-wide">
        <div>
          <dt>{startWords.address}</dt>
          <dd>
            <code>{answer.value.mqtt}</code>
          </dd>
        </div>
        <div>
          <dt>{startWords.topic}</dt>
          <dd>
            <code>{readingsTopic('NODE')}</code>
          </dd>
        </div>
      </dl>
      {address?.loopback && <p class="aside">{startWords.loopback}</p>}
      {address && (
        <>
          <p>{startWords.tryLine}</p>
          <CopyLine line={publishLine(address, FIRST_READING)} />
        </>
      )}
      <p role="status">{names === '' ? startWords.notHeard : startWords.heard(names)}</p>
    </>
  );
}
