/**
 * Elimination for a symmetric chain (Thomas algorithm). A dense solver from a
 * library would cost the square of the node count for the same answer.
 *
 * Row i reads: -link[i-1] x[i-1] + diagonal[i] x[i] - link[i] x[i+1] = right[i].
 *
 * @param links coupling of each node with the next, one fewer than nodes, none negative
 * @param diagonal at least the sum of the links of its row, which makes pivoting needless
 */
export function solveTridiagonal(
  links: readonly number[],
  diagonal: readonly number[],
  right: readonly number[],
): number[] {
  const n = diagonal.length;
  const pivot = new Array<number>(n).fill(0);
  const reduced = new Array<number>(n).fill(0);
  for (let i = 0; i < n; i++) {
    const link = i > 0 ? (links[i - 1] ?? 0) : 0;
    const factor = i > 0 ? link / (pivot[i - 1] ?? 1) : 0;
    pivot[i] = (diagonal[i] ?? 0) - factor * link;
    reduced[i] = (right[i] ?? 0) + factor * (reduced[i - 1] ?? 0);
  }
  const solution = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const onward = i < n - 1 ? (links[i] ?? 0) * (solution[i + 1] ?? 0) : 0;
    solution[i] = ((reduced[i] ?? 0) + onward) / (pivot[i] ?? 1);
  }
  return solution;
}
