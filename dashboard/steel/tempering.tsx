import { useState } from 'preact/hooks';
import type { z } from 'zod';
import type { TemperSet } from '../../hub/contract/compute/steels.ts';
import { TemperingCurveAnswer } from '../../hub/contract/compute/tempering.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { DurationField } from '../parts/number-field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Table } from '../parts/table.tsx';
import { temperature, unbroken } from '../words/format.ts';
import { temperWords } from '../words/steel-hardness.ts';
import { duration } from '../words/time.ts';
import { Known } from './known.tsx';
import type { SteelQuestion } from './question.ts';
import { rangeText } from './shown.ts';
import { TemperChart } from './temper-chart.tsx';
import { formulaRuns, refusals, type TemperPoint } from './temper-geometry.ts';
import { measuredAt } from './temper-measured.ts';
import { useComputation } from './use-computation.ts';

interface TemperingProps {
  readonly steel: SteelQuestion;
  /** Measured curves of the grade; none for a composition. */
  readonly sets: readonly z.infer<typeof TemperSet>[];
  readonly unit: DisplayUnit;
}

const USUAL_SECONDS = 2 * 3600;

/** Hardness against tempering temperature for one length of time, with who says so where. */
export function Tempering({ steel, sets, unit }: TemperingProps) {
  const [seconds, setSeconds] = useState(USUAL_SECONDS);
  const hours = seconds / 3600;
  const { value, error } = useComputation(
    'tempering-curve',
    { ...steel, hours, points: 56 },
    TemperingCurveAnswer,
  );
  const points = value?.points ?? [];
  const measured = measuredAt(sets, hours).filter(({ celsius }) => isInside(celsius, points));
  const runs = formulaRuns(points);
  return (
    <>
      <p class="aside">{temperWords.lead}</p>
      <div class="form form-narrow">
        <DurationField
          label={temperWords.time}
          hint={temperWords.timeHint}
          value={seconds}
          onChange={setSeconds}
        />
      </div>
      <ProblemNote error={error} />
      {runs.length > 0 && (
        <figure>
          <TemperChart points={points} runs={runs} measured={measured} unit={unit} />
          <figcaption class="scale-key">{temperWords.key(duration(seconds), measured.length > 0)}</figcaption>
        </figure>
      )}
      <Speakers points={points} unit={unit} />
      {runs.length > 0 && <CurveTable points={points} unit={unit} />}
    </>
  );
}

function isInside(celsius: number, points: readonly TemperPoint[]): boolean {
  return celsius >= (points.at(0)?.celsius ?? 0) && celsius <= (points.at(-1)?.celsius ?? 0);
}

interface PointsProps {
  readonly points: readonly TemperPoint[];
  readonly unit: DisplayUnit;
}

/** Which formula or table speaks over which temperatures, and where none does. */
function Speakers({ points, unit }: PointsProps) {
  return (
    <ul class="steel-speakers">
      {formulaRuns(points).map((run) => (
        <li key={`${run.formula} ${run.fromCelsius}`}>
          <strong>{unbroken(rangeText(run.fromCelsius, run.toCelsius, unit))}:</strong> {run.formula}.{' '}
          <Known from={{ standing: run.standing, source: run.source }} />
          {run.cautions.map((caution) => (
            <span key={caution.text} class="known-source">
              {unbroken(rangeText(caution.fromCelsius, caution.toCelsius, unit))}: {caution.text}
            </span>
          ))}
        </li>
      ))}
      {refusals(points).map(({ text, fromCelsius, toCelsius }) => (
        <li key={text}>
          <strong>{unbroken(rangeText(fromCelsius, toCelsius, unit))}:</strong> {temperWords.none} {text}.
        </li>
      ))}
    </ul>
  );
}

/** Every fifth point: what a person looks up. The drawing holds the rest. */
function CurveTable({ points, unit }: PointsProps) {
  return (
    <details>
      <summary>{temperWords.asTable}</summary>
      <Table
        caption={temperWords.table}
        hideCaption
        columns={[
          { key: 'at', head: temperWords.at, cell: ({ celsius }) => unbroken(temperature(celsius, unit)) },
          { key: 'hrc', head: temperWords.hardness, cell: ({ hardnessHrc }) => hardnessHrc.shown ?? '—' },
          {
            key: 'by',
            head: temperWords.by,
            cell: ({ hardnessHrc }) => hardnessHrc.formula ?? hardnessHrc.flags[0]?.message ?? '',
          },
        ]}
        rows={points.filter((_, index) => index % 5 === 0)}
        rowKey={({ celsius }) => String(celsius)}
        empty={temperWords.none}
      />
    </details>
  );
}
