import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { coolingWords } from '../words/heat.ts';
import { tied } from '../words/tied.ts';
import type { CoolAnswer } from './ask-cooling.ts';
import { buriedSaid } from './cooling-said.ts';

interface BuriedProps {
  readonly answer: CoolAnswer;
  readonly unit: DisplayUnit;
}

/** What a bar in ash or vermiculite really does: the answer that a thin bar's smith does not expect. */
export function Buried({ answer, unit }: BuriedProps) {
  const said = buriedSaid(answer, unit);
  return (
    <div class="heat-buried">
      <h3>{coolingWords.buriedTitle}</h3>
      {answer.plan.shape === 'sphere' ? (
        <p>{coolingWords.buriedBall}</p>
      ) : (
        said.map((text) => <p key={text}>{tied(text)}</p>)
      )}
      {said.length > 0 && <p class="aside">{coolingWords.buriedDoubt}</p>}
    </div>
  );
}
