import type { ComponentChild } from 'preact';
import { valueTicks } from '../firings/paper-scale.ts';
import { useWidth } from '../steel/use-width.ts';
import { number } from '../words/format.ts';
import { batchWords } from '../words/review.ts';
import { type ControlPicture, changeX, placeX, placeY, stretchX, valueEnds } from './control-geometry.ts';

interface ControlChartProps {
  readonly picture: ControlPicture;
  /** What the chart shows, for people who do not see it. */
  readonly summary: string;
  readonly height: number;
  /** Unit and name of the value axis. */
  readonly axis: string;
}

const MARGIN = { left: 62, right: 14, top: 30, bottom: 26 };

/** Values in a row with centre, limits, tolerance and changes. A marked value has another shape, and a number. */
export function ControlChart({ picture, summary, height, axis }: ControlChartProps) {
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const frame = {
    ...{ left: MARGIN.left, right: width - MARGIN.right },
    ...{ top: MARGIN.top, bottom: height - MARGIN.bottom },
  };
  const { values, lines, changes, marks } = picture;
  const ends = valueEnds(picture);
  const y = (value: number) => placeY(value, ends, frame);
  const x = (index: number) => placeX(index, values.length, frame);
  const ticks = valueTicks(ends.low, ends.high, 6);
  const decimals = ends.high - ends.low < 8 ? 1 : 0;
  return (
    <div ref={ref} class="control-room">
      <svg class="control-chart" width={width} height={height} role="img" aria-label={summary}>
        <ToleranceBand picture={picture} frame={frame} y={y} />
        {ticks.map((tick) => (
          <text key={tick} x={frame.left - 8} y={y(tick) + 5} text-anchor="end">
            {number(tick, decimals)}
          </text>
        ))}
        <text x={0} y={16}>
          {axis}
        </text>
        {lines.map((stretch) => {
          const [start, end] = stretchX(stretch, values.length, frame);
          const across = (value: number) => `M${start.toFixed(1)} ${y(value).toFixed(1)}H${end.toFixed(1)}`;
          return (
            <g key={stretch.from}>
              <path class="control-centre" d={across(stretch.centre)} />
              <path class="control-limit" d={`${across(stretch.lower)}${across(stretch.upper)}`} />
            </g>
          );
        })}
        {[...new Set(changes)].map((index) => (
          <path
            key={index}
            class="control-change"
            d={`M${changeX(index, values.length, frame).toFixed(1)} ${frame.top}V${frame.bottom}`}
          />
        ))}
        <path
          class="control-run"
          d={`M${values.map((v, i) => `${x(i).toFixed(1)} ${y(v).toFixed(1)}`).join('L')}`}
        />
        {values.map((value, index) => (
          <ControlPoint key={`${index} ${value}`} x={x(index)} y={y(value)} mark={marks[index] ?? null} />
        ))}
      </svg>
    </div>
  );
}

interface BandProps {
  readonly picture: ControlPicture;
  readonly frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly y: (value: number) => number;
}

function ToleranceBand({ picture: { tolerance }, frame, y }: BandProps) {
  if (tolerance === null) return null;
  const inside = (place: number) => Math.min(frame.bottom, Math.max(frame.top, place));
  const top = inside(tolerance.upper === null ? frame.top : y(tolerance.upper));
  const bottom = inside(tolerance.lower === null ? frame.bottom : y(tolerance.lower));
  if (bottom <= top) return null;
  const { left, right } = frame;
  return <rect class="control-tolerance" x={left} y={top} width={right - left} height={bottom - top} />;
}

function ControlPoint({
  x,
  y,
  mark,
}: {
  readonly x: number;
  readonly y: number;
  readonly mark: number | null;
}) {
  if (mark === null) return <circle class="control-point" cx={x} cy={y} r={4.5} />;
  return (
    <>
      <path class="control-marked" d={`M${x} ${y - 9}l9 9l-9 9l-9 -9Z`} />
      <text class="control-tag" x={x} y={y - 13} text-anchor="middle">
        {mark}
      </text>
    </>
  );
}

/** Which stroke means what. */
export function ControlKey() {
  const { key } = batchWords;
  const sample = (words: string, shape: ComponentChild) => (
    <li>
      <svg class="control-chart control-sample" viewBox="0 0 40 16" aria-hidden="true" focusable="false">
        {shape}
      </svg>{' '}
      {words}
    </li>
  );
  return (
    <ul class="chart-key">
      {sample(key.value, <circle class="control-point" cx="20" cy="8" r="4.5" />)}
      {sample(key.marked, <path class="control-marked" d="M20 1l7 7l-7 7l-7 -7Z" />)}
      {sample(key.centre, <path class="control-centre" d="M0 8h40" />)}
      {sample(key.limit, <path class="control-limit" d="M0 8h40" />)}
      {sample(key.tolerance, <rect class="control-tolerance" y="2" width="40" height="12" />)}
      {sample(key.change, <path class="control-change" d="M20 0v16" />)}
    </ul>
  );
}
