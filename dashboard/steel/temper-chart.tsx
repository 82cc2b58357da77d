import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase, toBase } from '../../hub/contract/units.ts';
import { valueTicks } from '../firings/paper-scale.ts';
import { number, unitNamed } from '../words/format.ts';
import { temperWords } from '../words/steel-hardness.ts';
import {
  bandOutline,
  type FormulaRun,
  hardnessEnds,
  middleLine,
  type TemperPoint,
} from './temper-geometry.ts';
import { useWidth } from './use-width.ts';

export interface MeasuredPair {
  readonly celsius: number;
  readonly hrc: number;
}

interface TemperChartProps {
  readonly points: readonly TemperPoint[];
  readonly runs: readonly FormulaRun[];
  /** Measured after the same time; drawn as crosses. */
  readonly measured: readonly MeasuredPair[];
  readonly unit: DisplayUnit;
}

const HEIGHT = 400;
const FRAME = { left: 58, top: 34, right: 16, bottom: 40 };

/** Hardness against tempering temperature: the band filled, its middle as a line, what was measured as crosses. */
export function TemperChart({ points, runs, measured, unit }: TemperChartProps) {
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const shown = unitNamed(unit);
  const [first, last] = [points.at(0)?.celsius ?? 0, points.at(-1)?.celsius ?? 1];
  const ends = hardnessEnds(runs);
  const foot = HEIGHT - FRAME.bottom;
  const right = width - FRAME.right;
  const x = (celsius: number) => FRAME.left + ((celsius - first) / (last - first)) * (right - FRAME.left);
  const y = (hrc: number) => foot - ((hrc - ends.low) / (ends.high - ends.low)) * (foot - FRAME.top);
  return (
    <div ref={ref}>
      <svg
        class="temper-chart"
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={temperWords.drawn}
      >
        {valueTicks(ends.low, ends.high, 6).map((hrc) => (
          <g key={hrc}>
            <path class="chart-line" d={`M${FRAME.left} ${y(hrc)}H${right}`} />
            <text class="scale-number" x={FRAME.left - 8} y={y(hrc) + 5} text-anchor="end">
              {number(hrc)}
            </text>
          </g>
        ))}
        {valueTicks(fromBase(first, shown), fromBase(last, shown), width < 600 ? 5 : 11).map((value) => (
          <g key={value}>
            <path class="chart-line" d={`M${x(toBase(value, shown))} ${FRAME.top}V${foot}`} />
            <text class="scale-number" x={x(toBase(value, shown))} y={foot + 20} text-anchor="middle">
              {number(value)}
            </text>
          </g>
        ))}
        <text class="scale-number" x={FRAME.left - 8} y={FRAME.top - 14} text-anchor="end">
          {temperWords.scale}
        </text>
        <text class="scale-number" x={right} y={foot + 38} text-anchor="end">
          {temperWords.axis(shown.label)}
        </text>
        {runs.map((run) => (
          <g key={`${run.formula} ${run.fromCelsius}`}>
            <path class="scale-band" d={bandOutline(run.points, x, y)} />
            <path class="temper-line" d={middleLine(run.points, x, y)} />
          </g>
        ))}
        {measured.map(({ celsius, hrc }) => (
          <path
            key={`${celsius} ${hrc}`}
            class="temper-cross"
            d={`M${x(celsius) - 6} ${y(hrc)}h12M${x(celsius)} ${y(hrc) - 6}v12`}
          />
        ))}
      </svg>
    </div>
  );
}
