import type { PlanPoint } from '../../hub/contract/firing.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase } from '../../hub/contract/units.ts';
import type { ChartMark, ChartSeries, CurveRole, TimeWindow } from '../charts/types.ts';
import { paperWords } from '../words/firings.ts';
import { number, unitNamed } from '../words/format.ts';
import { timeOfDay } from '../words/time.ts';
import { bandPath, curvePath, type Frame, planPath, type Scale, scaleOf } from './paper-geometry.ts';
import { timeTicks, valueTicks } from './paper-scale.ts';

const WIDTH = 720;
const HEIGHT = 250;
const FRAME: Frame = { left: 44, top: 18, width: WIDTH - 54, height: HEIGHT - 40 };

/** Without colour: what was watched is thick, what was computed is broken. */
const STROKES: Readonly<Record<CurveRole, string>> = {
  measured: 'paper-curve paper-watched',
  other: 'paper-curve',
  core: 'paper-curve paper-core',
  forecast: 'paper-curve',
};

export interface PaperChartProps {
  readonly name: string;
  readonly unit: DisplayUnit;
  readonly plan: readonly PlanPoint[];
  readonly series: readonly ChartSeries[];
  readonly marks: readonly ChartMark[];
  readonly whole: TimeWindow;
}

/** The chart in black on white, for paper alone. Marks carry numbers that the list under it explains. */
export function PaperChart({ name, unit, plan, series, marks, whole }: PaperChartProps) {
  const shown = unitNamed(unit);
  const show = (celsius: number) => fromBase(celsius, shown);
  const inside = plan.filter((point) => point.at <= whole.to);
  const scale = scaleOf(FRAME, whole, { plan: inside, series, show });
  return (
    <figure class="paper-only paper-chart">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={name}>
        <defs>
          <clipPath id="paper-frame">
            <rect x={FRAME.left} y={FRAME.top} width={FRAME.width} height={FRAME.height} />
          </clipPath>
          <pattern id="paper-hatch" width="5" height="5" patternUnits="userSpaceOnUse">
            <path class="paper-hatch" d="M0 5 5 0" />
          </pattern>
        </defs>
        <g clip-path="url(#paper-frame)">
          <path class="paper-band" d={bandPath(plan, scale, show)} />
          {series.flatMap((curve) =>
            curve.gaps.map((gap) => <GapBox key={`${curve.label}${gap.from}`} {...gap} scale={scale} />),
          )}
          <path class="paper-plan" d={planPath(plan, scale, show)} />
          {series.map((curve) => (
            <path key={curve.label} class={STROKES[curve.role]} d={curvePath(curve, scale, show)} />
          ))}
        </g>
        {series.map((curve) => (
          <CoreName key={curve.label} curve={curve} scale={scale} show={show} />
        ))}
        <Edges scale={scale} window={whole} label={shown.label} />
        {marks.map((mark, index) => (
          <Mark key={`${mark.at}${mark.words}`} x={scale.x(mark.at)} number={index + 1} />
        ))}
      </svg>
      <figcaption>{paperWords.key}</figcaption>
    </figure>
  );
}

interface CoreNameProps {
  readonly curve: ChartSeries;
  readonly scale: Scale;
  readonly show: (celsius: number) => number;
}

/** Two computed middles look alike on paper: each bears its name, a third of the way. */
function CoreName({ curve, scale, show }: CoreNameProps) {
  const at = curve.readings[Math.floor(curve.readings.length / 3)];
  if (curve.role !== 'core' || at === undefined) return null;
  return (
    <text class="paper-text" x={scale.x(at.at) + 4} y={scale.y(show(at.value)) + 10}>
      {curve.label}
    </text>
  );
}

interface GapBoxProps {
  readonly from: number;
  readonly to: number;
  readonly scale: Scale;
}

function GapBox({ from, to, scale }: GapBoxProps) {
  const x = scale.x(from);
  const width = Math.max(1, scale.x(to) - x);
  return <rect x={x} y={FRAME.top} width={width} height={FRAME.height} fill="url(#paper-hatch)" />;
}

function Mark({ x, number: count }: { readonly x: number; readonly number: number }) {
  if (x < FRAME.left || x > FRAME.left + FRAME.width) return null;
  return (
    <>
      <path class="paper-mark" d={`M${x} ${FRAME.top}V${FRAME.top + FRAME.height}`} />
      <text class="paper-text" x={x} y={FRAME.top - 4 - (count % 2) * 7} text-anchor="middle">
        {paperWords.mark(count)}
      </text>
    </>
  );
}

interface EdgesProps {
  readonly scale: Scale;
  readonly window: TimeWindow;
  readonly label: string;
}

function Edges({ scale, window, label }: EdgesProps) {
  const foot = FRAME.top + FRAME.height;
  return (
    <>
      <rect class="paper-edge" x={FRAME.left} y={FRAME.top} width={FRAME.width} height={FRAME.height} />
      {valueTicks(scale.low, scale.high, 6).map((value) => (
        <g key={value}>
          <path class="paper-tick" d={`M${FRAME.left - 4} ${scale.y(value)}h4`} />
          <text class="paper-text" x={FRAME.left - 6} y={scale.y(value) + 3} text-anchor="end">
            {number(value)}
          </text>
        </g>
      ))}
      <text class="paper-text" x={FRAME.left - 6} y={FRAME.top - 5} text-anchor="end">
        {label}
      </text>
      {timeTicks(window.from, window.to, 9).map((at) => (
        <g key={at}>
          <path class="paper-tick" d={`M${scale.x(at)} ${foot}v4`} />
          <text class="paper-text" x={scale.x(at)} y={foot + 14} text-anchor="middle">
            {timeOfDay(at)}
          </text>
        </g>
      ))}
    </>
  );
}
