import type { z } from 'zod';
import type { GlowAnswer } from '../../hub/contract/compute/glow.ts';
import type { StepWindow } from '../../hub/contract/compute/steels.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { unbroken } from '../words/format.ts';
import { scaleWords } from '../words/steel.ts';
import { ScaleBars } from './scale-bars.tsx';
import { scaleLayout } from './scale-layout.ts';
import { ScaleMarks } from './scale-marks.tsx';
import { ScaleRod } from './scale-rod.tsx';
import type { ScaleMark } from './scale-rows.ts';
import { rangeText, uncertaintyText } from './shown.ts';
import { useWidth } from './use-width.ts';

type Glow = z.infer<typeof GlowAnswer>;

export interface HeatScaleProps {
  readonly marks: readonly ScaleMark[];
  readonly windows: readonly StepWindow[];
  /** Null while the hub has not said how steel glows: the rod is drawn without colour. */
  readonly glow: Glow | null;
  readonly unit: DisplayUnit;
}

/** A measuring rod of heat: at its left what the steel does, at its right what the smith does. */
export function HeatScale({ marks, windows, glow, unit }: HeatScaleProps) {
  const { ref, width } = useWidth<HTMLElement>(1200);
  const layout = scaleLayout(width, marks, windows);
  const words = layout.isNarrow
    ? { left: scaleWords.itDoesShort, right: scaleWords.youDoShort }
    : { left: scaleWords.itDoes, right: scaleWords.youDo };
  const head = layout.stretch.topPx - 26;
  return (
    <figure class={layout.isNarrow ? 'heat-scale heat-scale-narrow' : 'heat-scale'} ref={ref}>
      <svg
        width={layout.width}
        height={layout.height}
        viewBox={`0 0 ${layout.width} ${layout.height}`}
        role="img"
        aria-label={scaleWords.name}
      >
        <text class="scale-side" x={layout.markLabelX} y={head} text-anchor="end">
          {words.left}
        </text>
        <text class="scale-side" x={layout.barLabelX} y={head}>
          {words.right}
        </text>
        <ScaleRod layout={layout} glow={glow?.scale ?? []} unit={unit} />
        <ScaleMarks layout={layout} unit={unit} />
        <ScaleBars layout={layout} unit={unit} />
      </svg>
      <figcaption class="scale-key">
        <p>
          {scaleWords.key.band}. {scaleWords.key.published}. {scaleWords.key.other}. {scaleWords.key.tails}.
        </p>
        <p>
          {scaleWords.close(
            unbroken(rangeText(layout.stretch.closeLowCelsius, layout.stretch.closeHighCelsius, unit)),
          )}
        </p>
        {glow && (
          <p>{scaleWords.glow(uncertaintyText(glow.scale[0]?.uncertaintyCelsius ?? 0, unit), glow.source)}</p>
        )}
      </figcaption>
    </figure>
  );
}
