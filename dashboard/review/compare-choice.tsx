import { useEffect } from 'preact/hooks';
import { MOST_COMPARED } from '../../hub/contract/comparison.ts';
import type { FiringSummary } from '../../hub/contract/firing.ts';
import { VerdictMark } from '../firings/verdict-mark.tsx';
import { Button } from '../parts/button.tsx';
import { CheckField } from '../parts/check-field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { compareWords } from '../words/review.ts';
import { dayAndTime } from '../words/time.ts';

interface ChoiceProps {
  readonly schedule: string;
  readonly ids: readonly string[];
  readonly onChange: (ids: readonly string[]) => void;
  /** Another reference was chosen, or none. */
  readonly onReference: () => void;
}

/** How many are on offer, and how many are taken when nobody has chosen. */
const OFFERED = 40;
const TAKEN = 6;

/** The firings of a schedule with a box for each, and its reference. */
export function Choice({ schedule, ids, onChange, onReference }: ChoiceProps) {
  const { api } = useShell();
  const { answer, reload } = useAnswer(schedule, async () => {
    const [firings, reference] = await Promise.all([
      api.listFirings({ scheduleId: schedule, status: 'finished', limit: OFFERED }),
      api.review.reference(schedule),
    ]);
    return { firings, referenceId: reference?.firingId ?? null };
  });
  const known = answer.state === 'here' ? answer.value : null;
  useEffect(() => {
    if (known && ids.length === 0) onChange(known.firings.slice(0, TAKEN).map(({ id }) => id));
  }, [known]);
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  if (!known) return null;
  const tick = (id: string, checked: boolean) =>
    onChange(checked ? [...ids, id].slice(-MOST_COMPARED) : ids.filter((one) => one !== id));
  const refer = async (change: Promise<unknown>) => {
    await change;
    reload();
    onReference();
  };
  return (
    <fieldset class="review-choice">
      <legend>{compareWords.choose}</legend>
      <p class="aside">{compareWords.most(MOST_COMPARED)}</p>
      {known.firings.length === 0 && <p>{compareWords.none}</p>}
      {known.referenceId === null && known.firings.length > 0 && <p>{compareWords.noReference}</p>}
      <ul>
        {known.firings.map((firing) => (
          <li key={firing.id}>
            <CheckField
              label={nameOf(firing)}
              checked={ids.includes(firing.id)}
              onChange={(checked) => tick(firing.id, checked)}
            />
            <VerdictMark verdict={firing.verdict} />
            {firing.id === known.referenceId ? (
              <span class="tag">{compareWords.reference}</span>
            ) : (
              <Button
                name={compareWords.makeReferenceName(nameOf(firing))}
                onPress={() => refer(api.review.chooseReference(schedule, firing.id))}
              >
                {compareWords.makeReference}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {known.referenceId !== null && (
        <Button onPress={() => refer(api.review.dropReference(schedule))}>
          {compareWords.dropReference}
        </Button>
      )}
    </fieldset>
  );
}

const nameOf = ({ title, startedAt, scheduleName }: FiringSummary): string =>
  `${title || scheduleName}, ${dayAndTime(startedAt)}`;
