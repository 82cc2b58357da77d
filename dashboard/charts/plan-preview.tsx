import { useMemo } from 'preact/hooks';
import type { DisplayUnit, Segment } from '../../hub/contract/schedule.ts';
import { chartWords } from '../words/charts.ts';
import { FiringChart } from './firing-chart.tsx';
import { COLD_CELSIUS, isSketch, planCurve } from './plan-curve.ts';

export interface PlanPreviewProps {
  readonly name: string;
  readonly segments: readonly Segment[];
  readonly unit: DisplayUnit;
}

/** The curve of a schedule while it is written or chosen. */
export function PlanPreview({ name, segments, unit }: PlanPreviewProps) {
  const plan = useMemo(() => planCurve(segments, { at: 0, celsius: COLD_CELSIUS }), [segments]);
  const end = plan.at(-1)?.at ?? 0;
  if (end === 0) return <p class="chart-empty">{chartWords.empty}</p>;
  return (
    <figure class="plan-preview">
      <FiringChart
        name={chartWords.previewName(name)}
        unit={unit}
        plan={plan}
        series={NOTHING}
        marks={NOTHING}
        whole={{ from: 0, to: end }}
        fromStart
      />
      {isSketch(segments) && <figcaption>{chartWords.sketch}</figcaption>}
    </figure>
  );
}

/** One array for every render: a new one would be a change to the chart. */
const NOTHING: readonly never[] = [];
