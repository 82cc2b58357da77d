import type { Answer } from '../../hub/contract/compute/estimate.ts';
import { unbroken } from '../words/format.ts';
import { Known } from './known.tsx';

interface AnswerFactProps {
  readonly label: string;
  /** An answer in anything but °C: the hub's own `shown` is used. */
  readonly answer: Answer;
  readonly hint?: string;
}

/** A computed number with its band and source, or the reason why there is none. Inside a `dl`. */
export function AnswerFact({ label, answer, hint }: AnswerFactProps) {
  return (
    <div>
      <dt>{label}</dt>
      <dd class="steel-figure">{answer.value === null ? '—' : unbroken(answer.shown)}</dd>
      {hint && <dd class="steel-note">{hint}</dd>}
      {answer.value === null ? (
        <dd class="steel-note">{answer.reason.message}</dd>
      ) : (
        <dd class="steel-note">
          <Known from={{ standing: answer.standing, source: `${answer.formula}. ${answer.source}` }} />
          {answer.flags.map(({ code, message }) => (
            <span key={code} class="known-source">
              {message}
            </span>
          ))}
        </dd>
      )}
    </div>
  );
}
