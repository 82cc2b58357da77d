import type { Segment } from '../../hub/contract/schedule.ts';
import type { ScheduleBasis } from '../../hub/contract/schedule-basis.ts';
import { basisWords } from '../words/schedules.ts';
import { KIND_WORDS } from '../words/segments.ts';
import { STANDING_WORDS } from '../words/steel.ts';
import { dayAndTime } from '../words/time.ts';
import { reasonsBySegment } from './basis.ts';

interface BasisProps {
  readonly basis: ScheduleBasis;
  /** The segments as they stand now: what was changed by hand is told. */
  readonly segments: readonly Segment[];
}

/** What a schedule was made from, and why each number is what it is. */
export function Basis({ basis, segments }: BasisProps) {
  return (
    <section class="basis" aria-label={basisWords.title}>
      <h2>{basisWords.title}</h2>
      <p>
        {basisWords.from(basis.steel.title, basis.section.thicknessMm, basis.furnace)}{' '}
        <span class="aside">{dayAndTime(basis.madeAt)}</span>
      </p>
      {reasonsBySegment(basis, segments).map(({ index, reasons }) => (
        <div key={index}>
          <h3>{basisWords.segment(index, KIND_WORDS[segments[index]?.kind ?? 'ramp'])}</h3>
          <ul>
            {reasons.map(({ reason, changed }) => (
              <li key={`${reason.path} ${reason.code}`}>
                {reason.text}{' '}
                <span class="aside">
                  {STANDING_WORDS[reason.from.standing]}
                  {reason.from.source !== '' && `: ${reason.from.source}`}
                </span>
                {changed && <strong class="basis-changed"> {basisWords.changed}</strong>}
              </li>
            ))}
          </ul>
        </div>
      ))}
      <Lines title={basisWords.uncertainty} lines={basis.uncertainty} />
      <Lines title={basisWords.dataSheet} lines={basis.askTheDataSheet} />
    </section>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
