import type { ComparedSegment, FiringComparison } from '../../hub/contract/comparison.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Sample } from '../heat/heat-key.tsx';
import { LineChart } from '../heat/line-chart.tsx';
import { compareWords } from '../words/review.ts';
import { comparePicture, compareReadout, planOf } from './compare-picture.ts';

interface CompareChartProps {
  readonly comparison: FiringComparison;
  /** Null: every segment, side by side. */
  readonly shown: ComparedSegment | null;
  readonly unit: DisplayUnit;
}

/** The overlay with its key: each look with its name. */
export function CompareChart({ comparison, shown, unit }: CompareChartProps) {
  const { key } = compareWords;
  const plan = planOf(comparison)?.firing;
  const count = comparison.firings.length;
  return (
    <figure class="heat-figure">
      <LineChart
        picture={comparePicture(comparison, unit, shown)}
        summary={compareWords.chart(count)}
        readout={(index) => compareReadout(comparison, unit, index)}
      />
      <figcaption>
        <ul class="chart-key">
          {comparison.referenceId !== null && <Sample kind="measured" words={key.reference} />}
          <Sample kind="other" words={key.firing} />
          {plan && <Sample kind="plan" words={key.plan(plan.title || plan.scheduleName)} />}
          <Sample kind="band" words={key.envelope(count)} />
        </ul>
        {comparison.firings.some(({ thinned }) => thinned) && <p class="aside">{compareWords.thinned}</p>}
      </figcaption>
    </figure>
  );
}
