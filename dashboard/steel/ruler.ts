import { valueTicks } from '../firings/paper-scale.ts';
import { type Stretch, shareOf } from './scale-geometry.ts';

/** Letters of a ruler want this much height each, in pixels. */
const PITCH_PX = 26;

/**
 * Round numbers along the rod, closer together where it is drawn larger, never so close that they touch.
 *
 * @param show turns °C into the unit that is shown; the numbers come back in that unit
 */
export function rulerTicks(stretch: Stretch, show: (celsius: number) => number): readonly number[] {
  const { lowCelsius, closeLowCelsius, closeHighCelsius, highCelsius } = stretch;
  const between = (from: number, to: number) => {
    const roomPx = (shareOf(to, stretch) - shareOf(from, stretch)) * stretch.heightPx;
    return valueTicks(show(from), show(to), Math.max(1, Math.floor(roomPx / PITCH_PX)));
  };
  const close = between(closeLowCelsius, closeHighCelsius);
  const perDegree =
    (stretch.heightPx * shareOf(closeLowCelsius, stretch)) / (show(closeLowCelsius) - show(lowCelsius));
  const apart = PITCH_PX / perDegree;
  const [first, last] = [close[0] ?? show(closeLowCelsius), close.at(-1) ?? show(closeHighCelsius)];
  const below = between(lowCelsius, closeLowCelsius).filter((value) => first - value >= apart);
  const above = between(closeHighCelsius, highCelsius).filter((value) => value - last >= apart);
  return [...below, ...close, ...above];
}
