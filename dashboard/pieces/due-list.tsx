import type { BenchItem } from '../../hub/contract/bench.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { hrefTo } from '../router.ts';
import { benchWords } from '../words/bench.ts';
import { temperature } from '../words/format.ts';
import { stepName } from './step-name.ts';

interface DueListProps {
  readonly due: readonly BenchItem[];
  readonly unit: DisplayUnit;
}

/** Every piece with a step left, as the hub orders them. */
export function DueList({ due, unit }: DueListProps) {
  return (
    <section class="piece-part" aria-labelledby="due-head">
      <h2 id="due-head">{benchWords.due}</h2>
      {due.length === 0 ? <p>{benchWords.nothing}</p> : <p class="aside">{benchWords.dueLong}</p>}
      <ul class="plain-list piece-rows">
        {due.map((item) => (
          <li key={item.pieceId}>
            <a class="piece-row" href={hrefTo({ view: 'piece', id: item.pieceId })}>
              <strong class="piece-mark">{item.mark}</strong>
              <span>
                {item.title}
                <span class="quiet piece-steel">{item.steelTitle}</span>
              </span>
              <span class="piece-due">
                <strong>{stepName(item.step)}</strong>
                <Standing item={item} unit={unit} />
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Standing({ item, unit }: { readonly item: BenchItem; readonly unit: DisplayUnit }) {
  const { step, window, urgent, before, firingId } = item;
  return (
    <>
      {step.kind === 'heat' && (
        <span class="quiet">
          {' '}
          {window === null
            ? benchWords.windowUnknown
            : `${benchWords.window(temperature(window.lowCelsius, unit), temperature(window.highCelsius, unit))}, ${benchWords.byWindow[window.by]}`}
        </span>
      )}
      {step.optional && <span class="tag">{benchWords.optional}</span>}
      {firingId !== null && <span class="tag">{benchWords.inFire}</span>}
      {urgent && <strong class="piece-caution">{benchWords.urgent}</strong>}
      {before === 'not-met' && <span class="piece-caution">{benchWords.notMet}</span>}
    </>
  );
}
