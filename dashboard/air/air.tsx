import '../parts/sheets.css';
import '../heat/heat.css';
import './air.css';
import './bars.css';
import './plates.css';
import './ventilation.css';
import type { AirView } from '../../hub/contract/air.ts';
import type { FeedState } from '../feed/state.ts';
import { LinkButton } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Shape } from '../parts/shape.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { airWords, PROFILE_WORDS } from '../words/air.ts';
import { timeOfDaySeconds } from '../words/time.ts';
import { ExposurePart } from './bars.tsx';
import { BloodPart } from './blood.tsx';
import { CalledOut } from './called-out.tsx';
import { CurvePart } from './curve.tsx';
import { LastShiftPart } from './last-shift.tsx';
import { LimitTable } from './limit-table.tsx';
import { roomSensors } from './now.ts';
import { CarbonMonoxideNowView } from './now.tsx';
import { OtherSensors } from './others.tsx';
import { type AirAnswer, useAir } from './use-air.ts';
import { VentilationPart } from './ventilation.tsx';

/** The air of the shop: now, what was breathed in, how it is carried off, and what nobody knows of it. */
export function AirPage() {
  const { feed } = useShell();
  const answer = useAir();
  const state = feed.state.value;
  return (
    <div class="air-page">
      <Page title={airWords.title}>
        <p class="air-caution">
          <Shape of="warning" /> <span>{airWords.caution}</span>
        </p>
        {state === null ? <p role="status">{airWords.asking}</p> : <Known state={state} answer={answer} />}
      </Page>
    </div>
  );
}

interface KnownProps {
  readonly state: FeedState;
  readonly answer: AirAnswer;
}

function Known({ state, answer }: KnownProps) {
  const { feed } = useShell();
  const { view, error, old, askNow } = answer;
  const nowMs = feed.now.value;
  const heardAt = feed.heardAt.value;
  const lastKnown = feed.blind.value && heardAt !== null ? timeOfDaySeconds(heardAt) : null;
  const { settings } = state.shop;
  const { carbonMonoxide, others } = roomSensors(state, nowMs);
  // The order of the curves must not jump about with the levels.
  const channels = [...state.channels.values()].filter(
    ({ adopted, quantity }) => adopted && quantity === 'carbon-monoxide',
  );
  return (
    <>
      <CarbonMonoxideNowView
        sensors={carbonMonoxide}
        settings={settings}
        nowMs={nowMs}
        lastKnown={lastKnown}
      />
      <CalledOut alarms={state.alarms.values()} lastKnown={lastKnown} />
      <OtherSensors sensors={others} settings={settings} nowMs={nowMs} />
      {old && view !== null && <OldNote view={view} />}
      <ProblemNote error={error} />
      {view === null && error === null && <p role="status">{airWords.asking}</p>}
      {view !== null && (
        <div class={old ? 'air-told air-told-old' : 'air-told'}>
          <div class="air-two">
            <ExposurePart view={view} />
            <div class="air-column">
              <CurvePart view={view} channels={channels} />
              <BloodPart view={view} />
            </div>
          </div>
          <VentilationPart view={view} onSaid={askNow} />
          <LastShiftPart view={view} />
          <Limits view={view} />
          <Notices view={view} />
        </div>
      )}
    </>
  );
}

function OldNote({ view }: { readonly view: AirView }) {
  return (
    <div class="air-old" role="alert">
      <Shape of="blind" />
      <div>
        <p class="air-old-title">{airWords.oldTitle}</p>
        <p>{airWords.old(timeOfDaySeconds(view.now))}</p>
      </div>
    </div>
  );
}

function Limits({ view }: { readonly view: AirView }) {
  return (
    <section class="air-part" aria-labelledby="air-limits">
      <h2 id="air-limits">{airWords.limitsTitle}</h2>
      <LimitTable caption={airWords.limitsCaption(PROFILE_WORDS[view.profile])} limits={view.limits} />
      <p class="aside">{airWords.limitsNote}</p>
      <p>
        <LinkButton href={hrefTo({ view: 'setup', section: 'limits' })}>{airWords.change}</LinkButton>
      </p>
    </section>
  );
}

function Notices({ view }: { readonly view: AirView }) {
  return (
    <section class="air-part" aria-labelledby="air-notices">
      <h2 id="air-notices">{airWords.noticesTitle}</h2>
      <ul class="air-notices">
        {view.notices.map(({ code, message }) => (
          <li key={code}>{message}</li>
        ))}
      </ul>
    </section>
  );
}
