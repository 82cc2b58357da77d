import type { PlanFault } from '../../hub/contract/planning.ts';
import { proposeWords, startWords } from '../words/bench.ts';
import { byWeight } from './batch.ts';

/** What speaks against a schedule, the wrong before the doubtful, each named in words: nothing here is an alarm. */
export function PlanFaults({ faults }: { readonly faults: readonly PlanFault[] }) {
  return (
    <section>
      <h3>{proposeWords.faults}</h3>
      {faults.length === 0 && <p>{proposeWords.noFaults}</p>}
      <ul class="plain-list plan-faults">
        {byWeight([...faults]).map(({ code, weight, segment, mark, text }) => (
          <li key={`${code} ${segment ?? ''} ${mark ?? ''}`} class={`plan-fault plan-fault-${weight}`}>
            <strong class="tag">{weight === 'wrong' ? startWords.wrong : startWords.doubt}</strong>
            {mark !== null && <strong>{startWords.ofPiece(mark)}</strong>}
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
