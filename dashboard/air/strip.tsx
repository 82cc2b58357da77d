import { airWords } from '../words/air.ts';
import { timeOfDay } from '../words/time.ts';
import type { Stretch } from './curve.ts';

interface StripProps {
  readonly name: string;
  readonly kind: 'hot' | 'gap';
  readonly stretches: readonly Stretch[];
  readonly window: Stretch;
}

const WIDTH = 1000;

/** One row under the curve, on the same time: when something was so. */
export function Strip({ name, kind, stretches, window }: StripProps) {
  const x = (at: number) => ((at - window.from) / (window.to - window.from)) * WIDTH;
  const said = stretches.map(({ from, to }) => airWords.stretch(timeOfDay(from), timeOfDay(to))).join(', ');
  return (
    <div class="air-strip">
      <p>{name}</p>
      <svg
        viewBox={`0 0 ${WIDTH} 20`}
        preserveAspectRatio="none"
        role="img"
        aria-label={airWords.stripSaid(name, said === '' ? airWords.stripNone : said)}
      >
        <path class="air-strip-line" d={`M0 19.5H${WIDTH}`} />
        {stretches.map(({ from, to }) => (
          <rect
            key={from}
            class={`air-strip-${kind}`}
            x={x(from)}
            y="0"
            width={Math.max(2, x(to) - x(from))}
            height="20"
          />
        ))}
      </svg>
    </div>
  );
}
