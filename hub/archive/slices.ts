/** from <= at < until, epoch ms. */
export interface Slice {
  readonly from: number;
  readonly until: number;
}

/**
 * Cuts [from, to] (both included, whole ms) into `count` slices of equal width to the millisecond, without
 * overlap and without a hole. A span of fewer milliseconds than `count` gives one slice a millisecond.
 */
export function sliceSpan(from: number, to: number, count: number): readonly Slice[] {
  const width = to - from + 1;
  const slices = Math.min(count, width);
  const edge = (index: number) => from + Math.floor((index * width) / slices);
  return Array.from({ length: slices }, (_, index) => ({ from: edge(index), until: edge(index + 1) }));
}
