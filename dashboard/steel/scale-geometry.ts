/** Where things stand on the drawn scale. Pure; pixels count from the top, temperatures in °C. */

export interface Stretch {
  readonly topPx: number;
  readonly heightPx: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
}

export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Nothing of use happens below this in a shop; what lies there is said at the foot. */
const FOOT_CELSIUS = 0;
const LEAST_TOP_CELSIUS = 1000;

/** The temperatures that a scale must hold: 0 °C to the next hundred above everything shown. */
export function scaleEnds(highs: readonly number[]): { lowCelsius: number; highCelsius: number } {
  const top = Math.max(LEAST_TOP_CELSIUS, ...highs);
  return { lowCelsius: FOOT_CELSIUS, highCelsius: Math.ceil((top + 10) / 100) * 100 };
}

/** The height of a temperature, held inside the ends of the scale. */
export function yOf(celsius: number, { topPx, heightPx, lowCelsius, highCelsius }: Stretch): number {
  const share = (celsius - lowCelsius) / (highCelsius - lowCelsius);
  return topPx + heightPx * (1 - Math.min(1, Math.max(0, share)));
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
