import { chartWords } from '../words/charts.ts';
import type { ChartSeries, CurveRole } from './types.ts';

/** Which line is which, each beside a piece of it: told by thickness and dashes, never by colour alone. */
export function ChartKey({ series }: { readonly series: readonly ChartSeries[] }) {
  return (
    <ul class="chart-key">
      <li>
        <Sample kind="plan" /> {chartWords.planned}
      </li>
      <li>
        <Sample kind="band" /> {chartWords.tolerance}
      </li>
      {series.map((curve) => (
        <li key={curve.label}>
          <Sample kind={curve.role} /> {curve.label}
        </li>
      ))}
    </ul>
  );
}

function Sample({ kind }: { readonly kind: CurveRole | 'plan' | 'band' }) {
  return (
    <svg class={`chart-sample chart-sample-${kind}`} viewBox="0 0 40 16" aria-hidden="true" focusable="false">
      {kind === 'band' ? <rect x="0" y="2" width="40" height="12" /> : <path d="M0 8h40" />}
    </svg>
  );
}
