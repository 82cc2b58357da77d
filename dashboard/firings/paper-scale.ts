/** Round steps along the edges of a drawn chart. Pure. */

const TIME_STEPS_MS = [1, 2, 5, 10, 15, 30, 60, 120, 240, 360, 720, 1440, 2880].map((m) => m * 60_000);
const VALUE_STEPS = [1, 2, 5];

/** Instants for a time axis: multiples of a round step; at most `most` steps fit the span. */
export function timeTicks(from: number, to: number, most: number): number[] {
  const step = TIME_STEPS_MS.find((size) => (to - from) / size <= most) ?? (to - from) / most;
  return multiples(from, to, step);
}

/** Values for a value axis: multiples of 1, 2 or 5 times a power of ten; at most `most` steps fit the span. */
export function valueTicks(low: number, high: number, most: number): number[] {
  const rough = (high - low) / most;
  if (!(rough > 0)) return [];
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = VALUE_STEPS.find((size) => size * power >= rough) ?? 10;
  return multiples(low, high, factor * power);
}

function multiples(from: number, to: number, step: number): number[] {
  const ticks: number[] = [];
  // Counted, not added up: sums of 0.1 would drift off the round numbers.
  for (let count = Math.ceil(from / step); count * step <= to; count += 1) {
    ticks.push(Number((count * step).toPrecision(15)));
  }
  return ticks;
}
