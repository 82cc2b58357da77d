import { heatWords } from '../words/heat.ts';
import type { Computed } from './use-computed.ts';

interface StandingProps {
  readonly computed: Computed<unknown>;
  readonly held: boolean;
}

/** Whether what stands below is the answer to what stands in the fields. */
export function Standing({ computed, held }: StandingProps) {
  const { value, fresh, error } = computed;
  const said = fresh ? '' : value !== null ? olderWords(held, error) : error === null ? heatWords.asking : '';
  return (
    <p class={said === '' ? 'sr-only' : 'heat-older'} role="status">
      {said}
    </p>
  );
}

function olderWords(held: boolean, error: unknown): string {
  if (held) return heatWords.olderHeld;
  return error === null ? heatWords.older : heatWords.olderFailed;
}
