import { faultWords } from '../words/faults.ts';
import { Shape } from './shape.tsx';

interface FaultSummaryProps {
  /** Each fault with the name of its field. */
  readonly faults: readonly string[];
}

/** What stands in the way of saving, announced when somebody tried to. Empty when nothing does. */
export function FaultSummary({ faults }: FaultSummaryProps) {
  if (faults.length === 0) return null;
  return (
    <div class="problem" role="alert">
      <Shape of="warning" />
      <div>
        <p class="problem-title">{faultWords.summary(faults.length)}</p>
        <ul>
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      </div>
    </div>
  );
}
