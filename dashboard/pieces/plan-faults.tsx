import type { PlanFault } from '../../hub/contract/planning.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { planFaultWords } from '../../hub/contract/words/en-planning.ts';
import { proposeWords, startWords } from '../words/bench.ts';
import { byWeight } from './batch.ts';

interface PlanFaultsProps {
  readonly faults: readonly PlanFault[];
  readonly unit: DisplayUnit;
}

/** What speaks against a schedule, the wrong before the doubtful, each named in words: nothing here is an alarm. */
export function PlanFaults({ faults, unit }: PlanFaultsProps) {
  return (
    <section>
      <h3>{proposeWords.faults}</h3>
      {faults.length === 0 && <p>{proposeWords.noFaults}</p>}
      <ul class="plain-list plan-faults">
        {byWeight([...faults]).map(({ code, weight, segment, mark, params }) => (
          <li key={`${code} ${segment ?? ''} ${mark ?? ''}`} class={`plan-fault plan-fault-${weight}`}>
            <strong class="tag">{weight === 'wrong' ? startWords.wrong : startWords.doubt}</strong>
            {mark !== null && <strong>{startWords.ofPiece(mark)}</strong>}
            {planFaultWords(code, params, unit)}
          </li>
        ))}
      </ul>
    </section>
  );
}
