import { useState } from 'preact/hooks';
import { HardenabilityAnswer, QUENCHES } from '../../hub/contract/compute/hardenability.ts';
import { MartensiteAnswer } from '../../hub/contract/compute/martensite.ts';
import { SelectField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Table } from '../parts/table.tsx';
import { UnitField } from '../setup/unit-field.tsx';
import { QUENCH_WORDS } from '../words/steel.ts';
import { hardenWords } from '../words/steel-hardness.ts';
import { AnswerFact } from './answer-fact.tsx';
import { QuenchChart } from './quench-chart.tsx';
import { type MediumRow, readThickness, rowOf, type SectionEntry, USUAL_SECTION } from './quench-rows.ts';
import type { SteelQuestion } from './question.ts';
import { useComputation } from './use-computation.ts';

/** Whether a section hardens through, how hard it comes out, what austenite stays. */
export function Hardening({ steel, title }: { readonly steel: SteelQuestion; readonly title: string }) {
  const [entry, setEntry] = useState<SectionEntry>(USUAL_SECTION);
  const [mm, setMm] = useState(25);
  const read = readThickness(entry.thickness);
  const change = (next: SectionEntry) => {
    setEntry(next);
    const thickness = readThickness(next.thickness);
    if ('mm' in thickness) setMm(thickness.mm);
  };
  const question = { ...steel, shape: entry.shape, thicknessMm: mm };
  const through = useComputation('hardenability', question, HardenabilityAnswer);
  const quenched = useComputation('martensite', steel, MartensiteAnswer);
  const row = through.value ? rowOf(through.value, entry.medium) : undefined;
  return (
    <>
      <SectionFields entry={entry} fault={'fault' in read ? read.fault : undefined} onChange={change} />
      <ProblemNote error={through.error} />
      {row && (
        <p class="steel-say" role="status">
          {hardenWords.verdict[row.hardensThrough](
            hardenWords.piece(mm, entry.shape, title),
            QUENCH_WORDS[entry.medium].toLowerCase(),
          )}
        </p>
      )}
      <ProblemNote error={quenched.error} />
      <dl class="facts steel-facts">
        {through.value && (
          <AnswerFact
            label={hardenWords.ideal}
            answer={through.value.idealDiameterMm}
            hint={hardenWords.idealHint}
          />
        )}
        {row && (
          <AnswerFact label={hardenWords.critical} answer={row.criticalMm} hint={hardenWords.criticalHint} />
        )}
        {quenched.value && (
          <>
            <AnswerFact label={hardenWords.hardness} answer={quenched.value.quenchedHardnessHrc} />
            <AnswerFact
              label={hardenWords.retained}
              answer={quenched.value.retainedAustenite}
              hint={hardenWords.carbon(quenched.value.carbonInAustenitePercent, quenched.value.carbonAssumed)}
            />
          </>
        )}
      </dl>
      {through.value?.idealDiameterMm.value != null && (
        <>
          <h3>{hardenWords.media}</h3>
          <QuenchChart media={through.value.media} sectionMm={mm} chosen={entry.medium} />
          <MediaTable media={through.value.media} />
        </>
      )}
    </>
  );
}

interface SectionFieldsProps {
  readonly entry: SectionEntry;
  readonly fault: string | undefined;
  readonly onChange: (entry: SectionEntry) => void;
}

function SectionFields({ entry, fault, onChange }: SectionFieldsProps) {
  return (
    <div class="form-row steel-row">
      <SelectField
        label={hardenWords.shape}
        value={entry.shape}
        options={[
          { value: 'bar', label: hardenWords.bar },
          { value: 'plate', label: hardenWords.plate },
        ]}
        onChange={(shape) => onChange({ ...entry, shape })}
      />
      <UnitField
        label={entry.shape === 'bar' ? hardenWords.diameter : hardenWords.thickness}
        unit="mm"
        value={entry.thickness}
        error={fault}
        onChange={(thickness) => onChange({ ...entry, thickness })}
      />
      <SelectField
        label={hardenWords.medium}
        value={entry.medium}
        options={QUENCHES.map((value) => ({ value, label: QUENCH_WORDS[value] }))}
        onChange={(medium) => onChange({ ...entry, medium })}
      />
    </div>
  );
}

function MediaTable({ media }: { readonly media: readonly MediumRow[] }) {
  return (
    <details>
      <summary>{hardenWords.asTable}</summary>
      <Table
        caption={hardenWords.media}
        hideCaption
        columns={[
          { key: 'medium', head: hardenWords.medium, cell: ({ medium }) => QUENCH_WORDS[medium] },
          { key: 'critical', head: hardenWords.critical, cell: ({ criticalMm }) => criticalMm.shown ?? '—' },
          {
            key: 'severity',
            head: hardenWords.severity,
            cell: ({ severityPerInch: { low, high } }) => `${low} to ${high}`,
          },
          {
            key: 'through',
            head: hardenWords.through,
            cell: (row) => hardenWords.answer[row.hardensThrough],
          },
        ]}
        rows={media}
        rowKey={({ medium }) => medium}
        empty={hardenWords.media}
      />
    </details>
  );
}
