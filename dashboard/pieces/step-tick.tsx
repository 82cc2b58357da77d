import type { RouteStep, StepOutcome } from '../../hub/contract/piece.ts';
import { words } from '../../hub/contract/words/words.ts';
import { Button } from '../parts/button.tsx';
import { hrefTo } from '../router.ts';
import { OUTCOME_WORDS, pieceWords } from '../words/pieces.ts';
import { dayAndTime } from '../words/time.ts';
import { stepKindName, stepName } from './step-name.ts';

interface StepTickProps {
  readonly step: RouteStep;
  readonly index: number;
  readonly isDue: boolean;
  /** How the step before it came out; null: not done, or there is none. */
  readonly before: StepOutcome | null;
  readonly busy: boolean;
  readonly onTick: (outcome: 'done' | 'skipped') => void;
  readonly onUntick: () => void;
}

/** One step: what it is, what the trade reminds itself of, and the press that says it is done. */
export function StepTick(props: StepTickProps) {
  const { step, index, isDue, before, busy } = props;
  const name = stepName(step);
  return (
    <li class={isDue ? 'tick is-due' : 'tick'}>
      <StepMark step={step} />
      <div class="tick-words">
        <p class="tick-name">
          {index + 1}. {name}
          {isDue && <strong class="tag">{pieceWords.dueNow}</strong>}
          {step.optional && <span class="tag">{pieceWords.optional}</span>}
        </p>
        {step.title !== '' && <p class="quiet">{stepKindName(step)}</p>}
        {step.note !== '' && <p class="quiet">{step.note}</p>}
        {isDue && before === 'not-met' && <p class="piece-caution">{pieceWords.before}</p>}
        <Done step={step} />
        {step.done === null && <Reminders step={step} isDue={isDue} />}
      </div>
      <div class="tick-acts">
        {step.done === null ? (
          <>
            <Button
              size="wall"
              tone={isDue ? 'main' : 'plain'}
              busy={busy}
              name={pieceWords.tickName(name)}
              onPress={() => props.onTick('done')}
            >
              {pieceWords.tick}
            </Button>
            {step.optional && (
              <Button busy={busy} name={pieceWords.skipName(name)} onPress={() => props.onTick('skipped')}>
                {pieceWords.skip}
              </Button>
            )}
          </>
        ) : (
          <Button busy={busy} name={pieceWords.untickName(name)} onPress={props.onUntick}>
            {pieceWords.untick}
          </Button>
        )}
      </div>
    </li>
  );
}

/** A square that is ticked, crossed, struck or empty; the words beside it say the same. */
function StepMark({ step }: { readonly step: RouteStep }) {
  return (
    <svg class="tick-mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <rect x="2" y="2" width="20" height="20" class="tick-line tick-thin" />
      {step.done && <path class="tick-line" d={STROKES[step.done.outcome]} />}
    </svg>
  );
}

const TICK = 'M6 12.5 10.5 17 18 7';
const STROKES: Readonly<Record<StepOutcome, string>> = {
  done: TICK,
  met: TICK,
  'met-with-doubts': 'M5 14c2.3-5 4.7-5 7-2s4.7 3 7-2',
  'not-met': 'M7 7l10 10M17 7 7 17',
  skipped: 'M6 12h12',
};

function Done({ step: { done } }: { readonly step: RouteStep }) {
  if (done === null) return null;
  return (
    <p class="quiet">
      {pieceWords.doneBy(OUTCOME_WORDS[done.outcome], dayAndTime(done.at), done.by)}
      {done.firingId !== null && (
        <>
          {' · '}
          <a class="inline-link" href={hrefTo({ view: 'firing', id: done.firingId })}>
            {pieceWords.byFiring}
          </a>
        </>
      )}
    </p>
  );
}

/** Open at the step that is due, folded at those that are not yet. */
function Reminders({ step, isDue }: { readonly step: RouteStep; readonly isDue: boolean }) {
  if (step.reminders.length === 0) return null;
  return (
    <details open={isDue} class="reminders">
      <summary>{pieceWords.reminders}</summary>
      <ul>
        {step.reminders.map((code) => (
          <li key={code}>{words('en').reminder[code]}</li>
        ))}
      </ul>
      <p class="quiet">{pieceWords.reminderStanding}</p>
    </details>
  );
}
