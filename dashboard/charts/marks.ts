import type { ChartMark } from './types.ts';

/** A mark with where it stands, in pixels. */
export interface PlacedMark {
  readonly mark: ChartMark;
  readonly x: number;
  /** 0 is the top row. */
  readonly row: number;
  /** Null: no room for its words in any row; its shape stands alone and the words are read at the cursor. */
  readonly words: string | null;
}

export interface MarkRoom {
  readonly left: number;
  readonly right: number;
  readonly rows: number;
  /** Width of the shape before the words, px. */
  readonly shapeWidth: number;
  readonly xOf: (at: number) => number;
  readonly widthOf: (words: string) => number;
}

const GAP_PX = 10;

/**
 * Puts marks into rows so that no words lie over others. The gravest are placed first, so that it is the
 * events that lose their words when room is short. Marks outside the room are left out.
 */
export function placeMarks(marks: readonly ChartMark[], room: MarkRoom): PlacedMark[] {
  const taken: { from: number; to: number }[][] = Array.from({ length: room.rows }, () => []);
  const seen = marks
    .map((mark) => ({ mark, x: room.xOf(mark.at) }))
    .filter(({ x }) => x >= room.left && x <= room.right)
    .sort((a, b) => gravity(a.mark) - gravity(b.mark) || a.mark.at - b.mark.at);
  const placed = seen.map(({ mark, x }) => {
    const to = x + room.shapeWidth + room.widthOf(mark.words) + GAP_PX;
    const row =
      to > room.right ? -1 : taken.findIndex((spans) => spans.every((s) => to < s.from || x > s.to));
    taken[row]?.push({ from: x - room.shapeWidth, to });
    return { mark, x, row: Math.max(0, row), words: row < 0 ? null : mark.words };
  });
  return placed.sort((a, b) => a.mark.at - b.mark.at);
}

function gravity(mark: ChartMark): number {
  switch (mark.shape) {
    case 'blind':
      return 0;
    case 'danger':
      return 1;
    case 'warning':
      return 2;
    case 'event':
      return 3;
    default:
      return mark.shape satisfies never;
  }
}

/** Marks whose instant is within `withinMs` of `at`, nearest first. */
export function marksNear(marks: readonly ChartMark[], at: number, withinMs: number): ChartMark[] {
  return marks
    .filter((mark) => Math.abs(mark.at - at) <= withinMs)
    .sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at));
}
