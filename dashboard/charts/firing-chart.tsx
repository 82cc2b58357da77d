import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { PlanPoint } from '../../hub/contract/firing.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase } from '../../hub/contract/units.ts';
import { scheme } from '../theme/scheme.ts';
import { chartWords } from '../words/charts.ts';
import { unitNamed } from '../words/format.ts';
import { ChartKey } from './chart-key.tsx';
import { toColumns } from './columns.ts';
import { ChartPainter, type Picture } from './painter.ts';
import { chartSummary } from './summary.ts';
import type { ChartMark, ChartSeries, ForetoldPoint, TimeWindow } from './types.ts';
import { useExploring } from './use-exploring.tsx';

export interface FiringChartProps {
  readonly unit: DisplayUnit;
  readonly plan: readonly PlanPoint[];
  readonly series: readonly ChartSeries[];
  /** Events and alarms, with shape and words. */
  readonly marks: readonly ChartMark[];
  /** The whole time to show, epoch ms. */
  readonly whole: TimeWindow;
  /** The forecast and its band. */
  readonly foretold?: readonly ForetoldPoint[];
  /** Draws the now-line. */
  readonly now?: number;
  /** Zoom, pan and a cursor; without it the chart is a picture. */
  readonly interactive?: boolean;
  /** The plan has no clock yet: the foot counts from the start. */
  readonly fromStart?: boolean;
  /** What the chart is called for people who do not see it. */
  readonly name: string;
}

function inUnit(points: readonly ForetoldPoint[], unit: DisplayUnit): Picture['foretold'] {
  const shown = unitNamed(unit);
  return points.map(({ at, low, high }) => ({ at, low: fromBase(low, shown), high: fromBase(high, shown) }));
}

/** Plan with its tolerance band, the measured curves, gaps as gaps, marks with shape and words. */
export function FiringChart(props: FiringChartProps) {
  const { unit, plan, series, marks, whole, interactive = false } = props;
  const [zoom, setZoom] = useState<TimeWindow | null>(null);
  const window = zoom ?? whole;
  const columns = useMemo(() => toColumns(plan, series, unit), [plan, series, unit]);
  const gaps = useMemo(() => series.flatMap((curve) => curve.gaps), [series]);
  const host = useRef<HTMLDivElement>(null);
  const painter = useRef<ChartPainter | null>(null);
  const exploring = useExploring({ columns, series, marks, unit, window, whole, setZoom, painter, host });
  const foretold = useMemo(() => inUnit(props.foretold ?? [], unit), [props.foretold, unit]);
  const picture: Picture = { columns, gaps, marks, window, now: props.now ?? null, foretold };
  const roles = series.map((curve) => curve.role).join();

  // A new chart only for other curves: everything else is set on the one that is there.
  useEffect(() => {
    if (host.current === null) return;
    const made = new ChartPainter(host.current, picture, {
      roles: series.map((curve) => curve.role),
      interactive,
      fromStart: props.fromStart ?? false,
      onSelect: exploring.select,
      onCursor: exploring.hover,
    });
    painter.current = made;
    // Subscribing calls at once, when the attribute is already on the page.
    const stop = scheme.subscribe(() => made.restyle());
    return () => {
      stop();
      made.destroy();
      painter.current = null;
    };
  }, [roles, interactive]);
  useEffect(() => painter.current?.show(picture));

  const summary = `${props.name}. ${chartSummary(columns, series, marks, { window, unit })}`;
  if (!interactive) return <div ref={host} class="chart" role="img" aria-label={summary} />;
  return (
    <figure class="chart-explored">
      {/* A cursor that moves along the time is a slider; its value is what the curves say there. */}
      <div
        ref={host}
        class="chart"
        role="slider"
        tabIndex={0}
        aria-label={summary}
        aria-valuemin={window.from}
        aria-valuemax={window.to}
        aria-valuenow={exploring.at ?? window.from}
        aria-valuetext={exploring.readout}
        onKeyDown={exploring.key}
        onDblClick={() => setZoom(null)}
      />
      <figcaption>
        <ChartKey series={series} />
        <p class="chart-readout">{exploring.readout}</p>
        <div class="chart-tools" role="toolbar" aria-label={chartWords.tools}>
          {exploring.tools}
        </div>
        <p class="chart-keys">{chartWords.keys}</p>
      </figcaption>
    </figure>
  );
}
