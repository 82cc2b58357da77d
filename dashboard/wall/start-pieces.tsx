import type { BenchItem } from '../../hub/contract/bench.ts';
import type { PlanFault } from '../../hub/contract/planning.ts';
import { HEAT_WORDS } from '../words/pieces.ts';
import { wallWords } from '../words/wall.ts';

interface ChoiceProps {
  readonly due: readonly BenchItem[];
  readonly chosen: ReadonlySet<string>;
  readonly onToggle: (pieceId: string) => void;
}

/** The pieces that wait for a heat, each one press with a glove: in the load or not. */
export function PieceChoice({ due, chosen, onToggle }: ChoiceProps) {
  if (due.length === 0) return null;
  return (
    <fieldset class="piece-choice">
      <legend>{wallWords.whichPieces}</legend>
      {due.map(({ pieceId, mark, title, step }) => {
        const isIn = chosen.has(pieceId);
        return (
          <button
            key={pieceId}
            type="button"
            class="button button-plain button-wall"
            aria-pressed={isIn}
            onClick={() => onToggle(pieceId)}
          >
            <span aria-hidden="true" class="piece-choice-box">
              {isIn ? '☑' : '☐'}
            </span>{' '}
            <strong>{mark}</strong> {title} {step.kind === 'heat' && HEAT_WORDS[step.step]}
          </button>
        );
      })}
    </fieldset>
  );
}

/** What speaks against this start, in words. */
export function StartFaults({ faults }: { readonly faults: readonly PlanFault[] }) {
  if (faults.length === 0) return null;
  return (
    <ul class="start-faults">
      {faults.map(({ code, weight, segment, mark, text }) => (
        <li key={`${code} ${segment ?? ''} ${mark ?? ''}`}>
          <strong>{weight === 'wrong' ? wallWords.planWrong : wallWords.planDoubt}</strong>{' '}
          {mark !== null && <strong>{mark}:</strong>} {text}
        </li>
      ))}
    </ul>
  );
}
