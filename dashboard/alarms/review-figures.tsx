import type { AlarmMeasure, AlarmReview } from '../../hub/contract/alarm-review.ts';
import { Shape } from '../parts/shape.tsx';
import { MEASURE_NAMES, reviewWords, STANDING_NAMES, VERDICT_NAMES } from '../words/alarm-review.ts';
import { number } from '../words/format.ts';
import { span } from '../words/span.ts';
import { saidMeasure } from './review-said.ts';

/** The figures against their targets: each as a number, a bar with the target marked, and a word. */
export function MeasureRows({ measures }: { readonly measures: readonly AlarmMeasure[] }) {
  return (
    <section class="alarms-part" aria-labelledby="review-measures">
      <h2 id="review-measures">{reviewWords.measures}</h2>
      <ul class="alarm-measures">
        {measures.map((measure) => (
          <MeasureRow key={measure.measure} measure={measure} />
        ))}
      </ul>
    </section>
  );
}

const WIDE = 1000;

function MeasureRow({ measure }: { readonly measure: AlarmMeasure }) {
  const said = saidMeasure(measure);
  const isAbove = measure.verdict === 'above';
  return (
    <li class={`alarm-measure alarm-measure-${measure.verdict}`}>
      <span class="alarm-measure-name">{MEASURE_NAMES[measure.measure]}</span>
      <strong class="alarm-measure-value">{said.value}</strong>
      <svg class="alarm-track" viewBox={`0 0 ${WIDE} 20`} preserveAspectRatio="none" aria-hidden="true">
        <rect class="alarm-track-ground" width={WIDE} height="20" />
        <rect class="alarm-track-value" y="4" height="12" width={said.valueShare * WIDE} />
        <line
          class="alarm-track-target"
          x1={said.targetShare * WIDE}
          x2={said.targetShare * WIDE}
          y1="0"
          y2="20"
        />
        {said.mostShare !== null && (
          <line
            class="alarm-track-most"
            x1={said.mostShare * WIDE}
            x2={said.mostShare * WIDE}
            y1="0"
            y2="20"
          />
        )}
      </svg>
      <span class="alarm-measure-verdict">
        {isAbove && <Shape of="warning" />} {VERDICT_NAMES[measure.verdict]}
      </span>
      <small class="alarm-measure-source">
        {said.target}. {reviewWords.source(measure.source, STANDING_NAMES[measure.standing])}
      </small>
    </li>
  );
}

/** The ten that came most often, as bars. */
export function Frequent({ rows }: { readonly rows: AlarmReview['mostFrequent'] }) {
  const most = Math.max(1, ...rows.map(({ count }) => count));
  return (
    <section class="alarms-part" aria-labelledby="review-frequent">
      <h2 id="review-frequent">{reviewWords.frequent}</h2>
      {rows.length === 0 && <p class="aside">{reviewWords.frequentNone}</p>}
      <ol class="alarm-frequent">
        {rows.map(({ kind, place, title, count, percent }) => (
          <li key={`${kind} ${place}`}>
            <span class="alarm-frequent-name">{title}</span>
            <strong>{reviewWords.times(count, number(percent))}</strong>
            <svg class="alarm-track" viewBox={`0 0 ${WIDE} 20`} preserveAspectRatio="none" aria-hidden="true">
              <rect class="alarm-track-value" height="20" width={(count / most) * WIDE} />
            </svg>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** From the announcement to the acknowledgement. */
export function AnswerTimes({ times }: { readonly times: AlarmReview['acknowledgement'] }) {
  const { medianSeconds, ninetiethPercentileSeconds, answered, unanswered } = times;
  const facts: readonly (readonly [string, string])[] = [
    ...(medianSeconds === null ? [] : [[reviewWords.median, span(medianSeconds)] as const]),
    ...(ninetiethPercentileSeconds === null
      ? []
      : [[reviewWords.ninetieth, span(ninetiethPercentileSeconds)] as const]),
    [reviewWords.answered, String(answered)],
    [reviewWords.unanswered, String(unanswered)],
  ];
  return (
    <section class="alarms-part" aria-labelledby="review-answer">
      <h2 id="review-answer">{reviewWords.answer}</h2>
      {medianSeconds === null && <p class="aside">{reviewWords.answerNone}</p>}
      <dl class="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
