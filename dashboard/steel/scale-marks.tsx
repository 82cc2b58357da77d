import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { unbroken } from '../words/format.ts';
import { type MarkKey, scaleWords } from '../words/steel.ts';
import type { PlacedMark, ScaleLayout } from './scale-layout.ts';
import { isPublished } from './scale-rows.ts';
import { bandText, valueText } from './shown.ts';

interface ScaleMarksProps {
  readonly layout: ScaleLayout;
  readonly unit: DisplayUnit;
}

/** The temperatures of the steel: each a block as tall as its band, a diamond at its value, a line to its words. */
export function ScaleMarks({ layout, unit }: ScaleMarksProps) {
  return (
    <>
      {layout.marks.map((placed) => (
        <g key={placed.mark.key}>
          <Block placed={placed} layout={layout} />
          <Label placed={placed} layout={layout} unit={unit} />
        </g>
      ))}
    </>
  );
}

/** Marks that divide the windows: their lines run on to the right of the rod. */
const DIVIDES: readonly MarkKey[] = ['ac1', 'ac3', 'acm'];

interface MarkProps {
  readonly placed: PlacedMark;
  readonly layout: ScaleLayout;
}

function Block({ placed, layout }: MarkProps) {
  const { mark, x, y, highY, lowY, labelY } = placed;
  const half = layout.laneWidth.mark * 0.24;
  const size = layout.laneWidth.mark * 0.3;
  const from = layout.markLabelX + 6;
  const hollow = isPublished(mark.standing) ? '' : ' is-hollow';
  return (
    <>
      <path class="scale-leader" d={`M${from} ${labelY}L${from + 10} ${labelY}L${x - half - 4} ${y}H${x}`} />
      <path class="scale-reach" d={`M${x} ${y}H${layout.rod.x}`} />
      {DIVIDES.includes(mark.key) && (
        <path class="scale-guide" d={`M${layout.rod.x + layout.rod.width} ${y}H${layout.guideToX}`} />
      )}
      <rect
        class={`scale-band${hollow}`}
        x={x - half}
        y={highY}
        width={2 * half}
        height={Math.max(3, lowY - highY)}
      />
      <path class="scale-value" d={`M${x} ${y - size}l${size} ${size}l${-size} ${size}l${-size} ${-size}z`} />
    </>
  );
}

function Label({ placed, layout, unit }: MarkProps & { readonly unit: DisplayUnit }) {
  const { mark, labelY, isBelow } = placed;
  const [x, y] = [layout.markLabelX, labelY + 5];
  if (layout.isNarrow) {
    return (
      <text class="scale-label" x={x} y={y} text-anchor="end">
        <tspan class="scale-symbol">{mark.symbol}</tspan> {valueText(mark.band, unit, false)}
      </text>
    );
  }
  return (
    <text class="scale-label" x={x} y={y} text-anchor="end">
      <tspan class="scale-meaning">{isBelow ? scaleWords.below : mark.meaning}</tspan>
      <tspan class="scale-symbol" dx="12">
        {mark.symbol}
      </tspan>
      <tspan dx="8">{unbroken(bandText(mark.band, unit))}</tspan>
    </text>
  );
}
