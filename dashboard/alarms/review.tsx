import '../parts/sheets.css';
import './alarms.css';
import './review.css';
import { useState } from 'preact/hooks';
import type { AlarmReview } from '../../hub/contract/alarm-review.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { reviewWords } from '../words/alarm-review.ts';
import { dayAndTime } from '../words/time.ts';
import { AnswerTimes, Frequent, MeasureRows } from './review-figures.tsx';
import { NuisanceLists } from './review-lists.tsx';
import { dayOf, reviewSpan, SPAN_CHOICES, type SpanChoice, type SpanTexts } from './review-span.ts';

/** How the alarms did over a chosen time, against the figures of EEMUA 191 and ISA-18.2. */
export function AlarmReviewPage() {
  const { feed } = useShell();
  const [texts, setTexts] = useState<SpanTexts>(() => {
    const today = dayOf(feed.now.peek());
    return { choice: 'month', fromDay: today, toDay: today };
  });
  // The hub's clock as it was when the time was chosen: a review must not be asked anew twice a second.
  const [chosenAt, setChosenAt] = useState(() => feed.now.peek());
  const choose = (change: Partial<SpanTexts>) => {
    setTexts((known) => ({ ...known, ...change }));
    setChosenAt(feed.now.peek());
  };
  const span = reviewSpan(texts, chosenAt);
  return (
    <div class="alarms-page">
      <Page title={reviewWords.title}>
        <div class="form-row">
          <SelectField<SpanChoice>
            label={reviewWords.span}
            value={texts.choice}
            options={SPAN_CHOICES.map((value) => ({ value, label: reviewWords.spans[value] }))}
            onChange={(choice) => choose({ choice })}
          />
          {texts.choice === 'own' && (
            <>
              <DayField
                label={reviewWords.from}
                value={texts.fromDay}
                onChange={(fromDay) => choose({ fromDay })}
              />
              <DayField label={reviewWords.to} value={texts.toDay} onChange={(toDay) => choose({ toDay })} />
            </>
          )}
        </div>
        {span.wrong === null ? (
          <Reviewed key={`${span.from} ${span.to}`} from={span.from} to={span.to} />
        ) : (
          <p role="alert">{span.wrong}</p>
        )}
      </Page>
    </div>
  );
}

interface DayFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (day: string) => void;
}

function DayField({ label, value, onChange }: DayFieldProps) {
  return (
    <Field label={label}>
      {(ids) => (
        <input {...ids} type="date" value={value} onChange={(event) => onChange(event.currentTarget.value)} />
      )}
    </Field>
  );
}

function Reviewed({ from, to }: { readonly from: number; readonly to: number }) {
  const { api } = useShell();
  const { answer } = useAnswer(`${from} ${to}`, () => api.alarms.review({ from, to }));
  if (answer.state === 'waiting') return <p role="status">{reviewWords.asking}</p>;
  if (answer.state === 'failed') return <ProblemNote error={answer.error} />;
  return <Figures review={answer.value} />;
}

function Figures({ review }: { readonly review: AlarmReview }) {
  return (
    <>
      <div class="alarm-review-head">
        <p>
          <strong>{reviewWords.announced(review.announced)}</strong>{' '}
          {reviewWords.told(dayAndTime(review.from), dayAndTime(review.to))}
        </p>
        {!review.enoughData && <p class="aside">{reviewWords.tooShort}</p>}
        <p class="aside">{reviewWords.notProof}</p>
      </div>
      <MeasureRows measures={review.measures} />
      <div class="alarm-review-two">
        <Frequent rows={review.mostFrequent} />
        <AnswerTimes times={review.acknowledgement} />
      </div>
      <NuisanceLists review={review} />
    </>
  );
}
