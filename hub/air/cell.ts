import type { ChannelReading } from '../contract/reading.ts';

/**
 * Time in cells of ten seconds: what adds up over hours needs no finer. A cell holds every channel's good readings
 * as mean, lowest and highest, so that a day costs the same whether a node speaks every second or every ten, and so
 * that a day judged live and a day judged again out of the archive are the same.
 */

export const CELL_MS = 10_000;

export interface CellValue {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/** from < at <= to, epoch ms, both on the grid. */
export interface AirCell {
  readonly from: number;
  readonly to: number;
  /** By channel id; a channel without a good reading in the cell is not in it. */
  readonly values: Readonly<Record<string, CellValue>>;
  /** How the shop stands ("door open", "fan on"), as a person said last; null: nobody ever said. */
  readonly tags: readonly string[] | null;
}

/** The last edge of the grid at or before an instant, epoch ms. */
export function cellEdge(at: number): number {
  return Math.floor(at / CELL_MS) * CELL_MS;
}

/** The tags that hold at an instant. */
export type TagsAt = (at: number) => readonly string[] | null;

/** Every cell of (after, upTo], both on the grid; readings in order of time. */
export function* airCells(
  readings: readonly ChannelReading[],
  after: number,
  upTo: number,
  tagsAt: TagsAt,
): Generator<AirCell> {
  let next = 0;
  for (let to = after + CELL_MS; to <= upTo; to += CELL_MS) {
    const values: Record<string, CellValue> = {};
    for (let reading = readings[next]; reading && reading.at <= to; reading = readings[++next]) {
      if (reading.quality !== 'good' || reading.at <= to - CELL_MS) continue;
      values[reading.channel] = added(values[reading.channel], reading.value);
    }
    yield { from: to - CELL_MS, to, values, tags: tagsAt(to) };
  }
}

function added(old: CellValue | undefined, value: number): CellValue {
  if (old === undefined) return { mean: value, low: value, high: value, count: 1 };
  const count = old.count + 1;
  return {
    mean: old.mean + (value - old.mean) / count,
    low: Math.min(old.low, value),
    high: Math.max(old.high, value),
    count,
  };
}
