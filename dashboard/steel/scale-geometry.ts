/** Where things stand on the drawn scale. Pure; pixels count from the top, temperatures in °C. */

/** A scale of temperature whose busy part is drawn larger: three straight pieces, so equal steps stay equal in each. */
export interface Stretch {
  readonly topPx: number;
  readonly heightPx: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** The part that is drawn larger. */
  readonly closeLowCelsius: number;
  readonly closeHighCelsius: number;
}

export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Nothing of use happens below this in a shop; what lies there is said at the foot. */
const FOOT_CELSIUS = 0;
const LEAST_TOP_CELSIUS = 1000;
/** Share of the height that the busy part gets. */
const CLOSE_SHARE = 0.56;
/** A busy part wider than this would be drawn no larger than the rest. */
const LEAST_CLOSE_CELSIUS = 200;

/**
 * The temperatures that a scale must hold: 0 °C to the next hundred above everything drawn; and the part where most
 * happens, in whole fifties.
 *
 * @param highs the top of everything that is drawn, °C
 * @param busy what crowds together, °C; spans that lie below the foot are left out
 */
export function scaleEnds(
  highs: readonly number[],
  busy: readonly Span[],
): Omit<Stretch, 'topPx' | 'heightPx'> {
  const highCelsius = Math.ceil((Math.max(LEAST_TOP_CELSIUS, ...highs) + 10) / 100) * 100;
  const lows = busy.map(({ low }) => low).filter((low) => low > FOOT_CELSIUS);
  const least = Math.floor(Math.min(700, ...lows) / 50) * 50;
  const closeLowCelsius = Math.max(FOOT_CELSIUS + 50, least);
  const most = Math.max(closeLowCelsius + LEAST_CLOSE_CELSIUS, ...busy.map(({ high }) => high));
  const closeHighCelsius = Math.min(highCelsius - 50, Math.ceil(most / 50) * 50);
  return { lowCelsius: FOOT_CELSIUS, highCelsius, closeLowCelsius, closeHighCelsius };
}

/** How far up a temperature stands: 0 at the foot, 1 at the top; held inside the ends. Never falls. */
export function shareOf(celsius: number, stretch: Omit<Stretch, 'topPx' | 'heightPx'>): number {
  const { lowCelsius, closeLowCelsius, closeHighCelsius, highCelsius } = stretch;
  const below = closeLowCelsius - lowCelsius;
  const above = highCelsius - closeHighCelsius;
  const belowShare = ((1 - CLOSE_SHARE) * below) / (below + above);
  const held = Math.min(highCelsius, Math.max(lowCelsius, celsius));
  if (held <= closeLowCelsius) return (belowShare * (held - lowCelsius)) / below;
  if (held >= closeHighCelsius) {
    return 1 - ((1 - CLOSE_SHARE - belowShare) * (highCelsius - held)) / above;
  }
  return belowShare + (CLOSE_SHARE * (held - closeLowCelsius)) / (closeHighCelsius - closeLowCelsius);
}

/** The height of a temperature, held inside the ends of the scale. */
export function yOf(celsius: number, stretch: Stretch): number {
  return stretch.topPx + stretch.heightPx * (1 - shareOf(celsius, stretch));
}

/**
 * A lane for each span, so that no two in one lane touch: 0 is the lane nearest to the scale. The order of the spans
 * is kept; each takes the first lane that is free where it lies.
 */
export function lanesOf(spans: readonly Span[], gap: number): readonly number[] {
  const taken: Span[][] = [];
  return spans.map((span) => {
    const free = taken.findIndex((lane) =>
      lane.every((other) => span.low > other.high + gap || span.high < other.low - gap),
    );
    const at = free < 0 ? taken.length : free;
    taken[at] = [...(taken[at] ?? []), span];
    return at;
  });
}

/**
 * Heights for labels that would like to stand at `wanted`, none nearer than `pitch` to the next and all between `from`
 * and `to`: the least moved, by pooling neighbours that collide (isotonic regression). In the order of `wanted`.
 */
export function spreadLabels(
  wanted: readonly number[],
  pitch: number,
  { from, to }: { readonly from: number; readonly to: number },
): readonly number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y || a.index - b.index);
  const level = pooled(order.map(({ y }, rank) => y - rank * pitch));
  const highest = Math.max(from, to - (wanted.length - 1) * pitch);
  const placed = wanted.slice();
  for (const [rank, { index }] of order.entries()) {
    const free = Math.min(highest, Math.max(from, level[rank] ?? from));
    placed[index] = free + rank * pitch;
  }
  return placed;
}

/** The nearest sequence that never falls, by least squares. */
function pooled(values: readonly number[]): number[] {
  const blocks: { sum: number; count: number }[] = [];
  for (const value of values) {
    let block = { sum: value, count: 1 };
    for (let before = blocks.at(-1); before !== undefined; before = blocks.at(-1)) {
      if (before.sum / before.count <= block.sum / block.count) break;
      block = { sum: block.sum + before.sum, count: block.count + before.count };
      blocks.pop();
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}
