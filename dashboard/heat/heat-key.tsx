import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { temperature } from '../words/format.ts';
import { heatWords } from '../words/heat.ts';
import type { HeatAnswer } from './ask.ts';
import { GLOWS, type Glowing } from './glows.ts';

interface HeatKeyProps {
  readonly answer: HeatAnswer;
  readonly unit: DisplayUnit;
}

/** Which line is which, and which colours the cut shows: each with its name. */
export function HeatKey({ answer, unit }: HeatKeyProps) {
  const hottest = Math.max(...answer.conduction.curves.surfaceCelsius);
  const glows = GLOWS.filter(({ fromCelsius }) => fromCelsius <= hottest);
  return (
    <>
      <ul class="chart-key">
        <Sample kind="core" words={heatWords.key.core} />
        <Sample kind="measured" words={heatWords.key.surface} />
        <Sample kind="plan" words={heatWords.key.furnace} />
        <Sample kind="band" words={heatWords.key.band} />
      </ul>
      {glows.length > 0 && (
        <>
          <p class="aside">{`${heatWords.cutCaption(answer.plan.shape)} ${heatWords.glowNote}`}</p>
          <ul class="heat-glows">
            {glows.map((glow) => (
              <Swatch key={glow.name} glow={glow} unit={unit} />
            ))}
          </ul>
        </>
      )}
    </>
  );
}

export interface SampleProps {
  readonly kind: 'core' | 'measured' | 'other' | 'plan' | 'band';
  readonly words: string;
}

export function Sample({ kind, words }: SampleProps) {
  return (
    <li>
      <svg
        class={`chart-sample chart-sample-${kind}`}
        viewBox="0 0 40 16"
        aria-hidden="true"
        focusable="false"
      >
        {kind === 'band' ? <rect x="0" y="2" width="40" height="12" /> : <path d="M0 8h40" />}
      </svg>{' '}
      {words}
    </li>
  );
}

function Swatch({ glow, unit }: { readonly glow: Glowing; readonly unit: DisplayUnit }) {
  return (
    <li>
      <svg viewBox="0 0 10 10" aria-hidden="true" focusable="false">
        <rect x="0.5" y="0.5" width="9" height="9" fill={glow.colour} />
      </svg>
      {heatWords.glowFrom(glow.name, temperature(glow.fromCelsius, unit))}
    </li>
  );
}
