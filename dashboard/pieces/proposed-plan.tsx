import type { Proposal } from '../../hub/contract/planning.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { planReasonWords } from '../../hub/contract/words/en-planning.ts';
import { proposeWords } from '../words/bench.ts';
import { segmentName, segmentTerms } from '../words/segments.ts';
import { STANDING_WORDS } from '../words/steel.ts';

interface ProposedPlanProps {
  readonly draft: Proposal['draft'];
  readonly unit: DisplayUnit;
}

/** The segments of a proposed schedule, and why each number is what it is. */
export function ProposedPlan({ draft, unit }: ProposedPlanProps) {
  const { segments, basis } = draft;
  return (
    <>
      <section>
        <h3>{proposeWords.plan}</h3>
        <ol>
          {segments.map((segment, index) => (
            // A proposal is shown once and never reordered.
            <li key={index}>
              {segmentName(segment, unit)} <span class="quiet">{segmentTerms(segment, unit)}</span>
            </li>
          ))}
        </ol>
      </section>
      {basis && (
        <>
          <details>
            <summary>{proposeWords.reasons}</summary>
            <ul>
              {basis.reasons.map(({ path, code, params, from }) => (
                <li key={`${path} ${code}`}>
                  {planReasonWords(code, params, unit)}{' '}
                  <span class="quiet">{STANDING_WORDS[from.standing]}</span>
                </li>
              ))}
            </ul>
          </details>
          <Lines title={proposeWords.uncertainty} lines={basis.uncertainty} />
          <Lines title={proposeWords.dataSheet} lines={basis.askTheDataSheet} />
        </>
      )}
    </>
  );
}

/** Lines under a fold; nothing when there are none. */
export function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <details>
      <summary>{title}</summary>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
