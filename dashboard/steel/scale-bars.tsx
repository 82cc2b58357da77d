import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { STEP_SHORT, STEP_WORDS } from '../words/steel.ts';
import type { PlacedBar, ScaleLayout } from './scale-layout.ts';
import { isPublished } from './scale-rows.ts';
import { windowText } from './shown.ts';

interface ScaleBarsProps {
  readonly layout: ScaleLayout;
  readonly unit: DisplayUnit;
}

/** The windows of the steps as bars: filled when published, hollow when not; tails for what the ends are good to. */
export function ScaleBars({ layout, unit }: ScaleBarsProps) {
  return (
    <>
      {layout.bars.map((placed) => (
        <g key={placed.window.step}>
          <Bar placed={placed} layout={layout} />
          <Label placed={placed} layout={layout} unit={unit} />
        </g>
      ))}
    </>
  );
}

interface BarProps {
  readonly placed: PlacedBar;
  readonly layout: ScaleLayout;
}

function Bar({ placed, layout }: BarProps) {
  const { window: step, x, highY, lowY, tailHighY, tailLowY, labelY } = placed;
  const half = layout.laneWidth.bar * 0.3;
  const middle = (highY + lowY) / 2;
  const to = layout.barLabelX - 6;
  const hollow = isPublished(step.from.standing) ? '' : ' is-hollow';
  return (
    <>
      <path class="scale-leader" d={`M${x + half} ${middle}L${to - 10} ${labelY}H${to}`} />
      <path class="scale-tail" d={`M${x} ${tailHighY}V${tailLowY}`} />
      <rect
        class={`scale-bar${hollow}`}
        x={x - half}
        y={highY - (lowY - highY < 4 ? 2 : 0)}
        width={2 * half}
        height={Math.max(4, lowY - highY)}
      />
    </>
  );
}

function Label({ placed, layout, unit }: BarProps & { readonly unit: DisplayUnit }) {
  const { window: step, labelY } = placed;
  if (layout.isNarrow) {
    return (
      <text class="scale-label scale-symbol" x={layout.barLabelX} y={labelY + 5}>
        {STEP_SHORT[step.step]}
      </text>
    );
  }
  return (
    <text class="scale-label" x={layout.barLabelX} y={labelY + 5}>
      <tspan class="scale-symbol">{STEP_WORDS[step.step]}</tspan>
      <tspan dx="8">{windowText(step, unit)}</tspan>
    </text>
  );
}
