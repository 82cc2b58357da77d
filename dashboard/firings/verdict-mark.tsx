import type { FiringVerdict } from '../../hub/contract/firing.ts';
import { VERDICT_WORDS } from '../words/firings.ts';

/**
 * A verdict as shape and words, in ink alone: colour is kept for alarms, and a firing that was not met is a
 * result, not something to act on now.
 */
export function VerdictMark({ verdict }: { readonly verdict: FiringVerdict }) {
  return (
    <span class="verdict">
      <svg class="verdict-shape" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
        {drawing(verdict)}
      </svg>
      <span>{VERDICT_WORDS[verdict]}</span>
    </span>
  );
}

function drawing(verdict: FiringVerdict) {
  switch (verdict) {
    case 'pending':
      return <circle cx="12" cy="12" r="8.5" class="verdict-line verdict-dots" />;
    case 'met':
      return <path class="verdict-line" d="M3.5 12.5 9.5 19 20.5 5" />;
    case 'met-with-doubts':
      return <path class="verdict-line" d="M3 15c3-7 6-7 9-3s6 4 9-3" />;
    case 'not-met':
      return <path class="verdict-line" d="M5 5l14 14M19 5 5 19" />;
    default:
      return verdict satisfies never;
  }
}
