import { useState } from 'preact/hooks';
import type { AirView } from '../../hub/contract/air.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { LineChart } from '../heat/line-chart.tsx';
import { useShell } from '../shell.ts';
import { airWords } from '../words/air.ts';
import { timeOfDay } from '../words/time.ts';
import { ppmText } from './bars.ts';
import {
  type CurveChannel,
  type CurveDrawn,
  drawCurve,
  gapsOf,
  lookOf,
  type Stretch,
  within,
} from './curve.ts';
import { Strip } from './strip.tsx';
import { useAirCurves } from './use-air-curves.ts';

const SPANS = [1, 4, 12] as const;
const HOUR_MS = 3_600_000;
/** The picture moves on in steps, so that it is not drawn anew at every reading. */
const STEP_MS = 60_000;

interface CurvePartProps {
  readonly view: AirView;
  readonly channels: readonly Channel[];
}

/** The level over time with the limits as lines, and under it when furnaces were hot and sensors silent. */
export function CurvePart({ view, channels }: CurvePartProps) {
  const { feed } = useShell();
  const [hours, setHours] = useState<(typeof SPANS)[number]>(4);
  const nowMs = feed.now.value;
  const to = Math.ceil(nowMs / STEP_MS) * STEP_MS;
  const window = { from: to - hours * HOUR_MS, to };
  // Asked for once a choice of span: what comes later grows the series.
  const [asked, setAsked] = useState(window.from);
  const curves = useAirCurves(channels, asked);
  if (channels.length === 0) return null;
  const drawn = drawCurve(curves, view.limits, window, nowMs);
  const choose = (next: (typeof SPANS)[number]) => {
    setHours(next);
    setAsked(to - next * HOUR_MS);
  };
  return (
    <section class="air-part air-curve" aria-labelledby="air-curve">
      <h2 id="air-curve">{airWords.curveTitle}</h2>
      <fieldset class="heat-ways">
        <legend>{airWords.span}</legend>
        {SPANS.map((one) => (
          <button
            key={one}
            type="button"
            class="button button-plain"
            aria-pressed={one === hours}
            onClick={() => choose(one)}
          >
            {airWords.hours(one)}
          </button>
        ))}
      </fieldset>
      <div class="air-figure">
        <LineChart
          picture={drawn.picture}
          summary={airWords.curveSummary(hours, highestText(drawn))}
          readout={(index) => readout(drawn, curves, index, view)}
        />
        <div class="air-strips">
          {view.furnaces.map(({ id, name, hot }) => (
            <Strip
              key={id}
              name={hot === null ? airWords.hotUnknown(name) : airWords.hot(name)}
              kind="hot"
              stretches={within(
                view.fires.filter(({ furnaceId }) => furnaceId === id),
                known(window, nowMs),
              )}
              window={window}
            />
          ))}
          {curves.map((curve) => (
            <Strip
              key={curve.id}
              name={airWords.gapOf(curve.label)}
              kind="gap"
              stretches={gapsOf(curve, known(window, nowMs), nowMs)}
              window={window}
            />
          ))}
        </div>
      </div>
      {curves.length > 1 && <CurveKey curves={curves} />}
      {drawn.beyond !== '' && <p class="aside">{airWords.beyond(drawn.beyond)}</p>}
    </section>
  );
}

function CurveKey({ curves }: { readonly curves: readonly CurveChannel[] }) {
  return (
    <ul class="chart-key">
      {curves.map(({ id, label }, index) => (
        <li key={id}>
          <svg
            class={`chart-sample chart-sample-${lookOf(index)}`}
            viewBox="0 0 40 16"
            aria-hidden="true"
            focusable="false"
          >
            <path d="M0 8h40" />
          </svg>{' '}
          {label}
        </li>
      ))}
    </ul>
  );
}

/** Nothing is drawn of the minute that has not been yet. */
function known({ from, to }: Stretch, nowMs: number): Stretch {
  return { from, to: Math.min(to, nowMs) };
}

function highestText({ highestPpm }: CurveDrawn): string {
  return highestPpm === null ? airWords.curveNothing : `${ppmText(highestPpm)} ppm`;
}

function readout(
  { picture, atOf }: CurveDrawn,
  curves: readonly CurveChannel[],
  index: number,
  view: AirView,
): string {
  const lines = picture.lines.slice(picture.lines.length - curves.length);
  const values = lines.map(({ y }, place) => {
    const value = y[index] ?? null;
    const said = value === null ? airWords.notMeasured : `${ppmText(value)} ppm`;
    return curves.length === 1 ? said : airWords.curveValue(curves[place]?.label ?? '', said);
  });
  const at = atOf(index);
  const hot = view.furnaces
    .filter(({ id }) =>
      view.fires.some(
        ({ furnaceId, from, to }) => furnaceId === id && from <= at && at <= (to ?? Number.POSITIVE_INFINITY),
      ),
    )
    .map(({ name }) => airWords.hot(name));
  return airWords.readout(timeOfDay(at), [...values, ...hot].join(', '));
}
