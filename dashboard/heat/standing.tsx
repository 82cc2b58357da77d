import { heatWords } from '../words/heat.ts';
import type { Computed } from './use-computed.ts';

interface StandingProps {
  readonly computed: Computed<unknown>;
  readonly held: boolean;
}

/** Whether what stands below is the answer to what stands in the fields. */
export function Standing({ computed, held }: StandingProps) {
  const { value, fresh, error } = computed;
  const said = fresh
    ? ''
    : value !== null
      ? held || error !== null
        ? heatWords.olderHeld
        : heatWords.older
      : error === null
        ? heatWords.asking
        : '';
  return (
    <p class={said === '' ? 'sr-only' : 'heat-older'} role="status">
      {said}
    </p>
  );
}
