import type { Provenance } from '../../hub/contract/compute/estimate.ts';
import { STANDING_WORDS } from '../words/steel.ts';
import { isPublished } from './scale-rows.ts';

/** How a number is known, in words, then its source. What rests on memory or habit stands out without colour. */
export function Known({ from }: { readonly from: Provenance }) {
  const { standing, source, note } = from;
  return (
    <>
      <span class={isPublished(standing) ? 'known' : 'known known-weak'}>{STANDING_WORDS[standing]}</span>
      {source !== '' && <span class="known-source">{source}</span>}
      {note !== undefined && <span class="known-source">{note}</span>}
    </>
  );
}
