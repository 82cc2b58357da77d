import type { Channel } from '../../hub/contract/shop.ts';
import { fromBase } from '../../hub/contract/units.ts';
import type { TimeWindow } from '../charts/types.ts';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';
import { amount, shownUnit } from '../words/format.ts';
import { timeOfDay } from '../words/time.ts';
import { curvePath, type Frame, scaleOf } from './paper-geometry.ts';
import { timeTicks } from './paper-scale.ts';
import { curveSeries } from './picture.ts';
import type { Curve } from './use-curves.ts';

const WIDTH = 1000;
const HEIGHT = 120;
const FRAME: Frame = { left: 0, top: 6, width: WIDTH, height: HEIGHT - 12 };

interface StripsProps {
  readonly curves: readonly Curve[];
  readonly window: TimeWindow;
}

/** What is not a temperature (gas pressure, cylinder mass) gets a strip of its own: its scale is another. */
export function Strips({ curves, window }: StripsProps) {
  const others = curves.filter((curve) => curve.channel.quantity !== 'temperature');
  if (others.length === 0) return null;
  return (
    <>
      <h3>{firingWords.strips}</h3>
      {others.map((curve) => (
        <Strip key={curve.channel.id} curve={curve} window={window} quantity={curve.channel.quantity} />
      ))}
    </>
  );
}

interface StripProps {
  readonly curve: Curve;
  readonly window: TimeWindow;
  readonly quantity: Channel['quantity'];
}

function Strip({ curve: { channel, series }, window, quantity }: StripProps) {
  const settings = useShell().feed.state.value?.shop.settings;
  if (series === null || settings === undefined) return null;
  const unit = shownUnit(quantity, settings);
  const show = (base: number) => fromBase(base, unit);
  const drawn = curveSeries(channel, series, null);
  const scale = scaleOf(FRAME, window, { plan: [], series: [drawn], show });
  const good = series.readings
    .filter((reading) => reading.quality === 'good')
    .map((reading) => reading.value);
  const say = (base: number) => {
    const { number, unit: label } = amount(base, quantity, settings);
    return `${number} ${label}`;
  };
  const words =
    good.length === 0
      ? `${channel.label}: ${firingWords.noReading}`
      : `${channel.label}: ${firingWords.fromTo(say(good.reduce((a, b) => Math.min(a, b))), say(good.reduce((a, b) => Math.max(a, b))))}`;
  return (
    <figure class="strip">
      <figcaption>{words}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" role="img" aria-label={words}>
        {timeTicks(window.from, window.to, 8).map((at) => (
          <path key={at} class="strip-tick" d={`M${scale.x(at)} ${HEIGHT - 12}V${HEIGHT}`}>
            <title>{timeOfDay(at)}</title>
          </path>
        ))}
        <path class="strip-curve" d={curvePath(drawn, scale, show)} />
      </svg>
    </figure>
  );
}
