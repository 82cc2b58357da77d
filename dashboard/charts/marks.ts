import type { ChartMark } from './types.ts';

/** A mark with where it stands, in pixels. */
export interface PlacedMark {
  readonly mark: ChartMark;
  readonly x: number;
  /** 0 is the top row. */
  readonly row: number;
  /** Which side of the shape the words stand; null: no room, the words are read at the cursor. */
  readonly words: 'right' | 'left' | null;
}

export interface MarkRoom {
  readonly left: number;
  readonly right: number;
  readonly rows: number;
  /** Width of the shape, px. */
  readonly shapeWidth: number;
  readonly xOf: (at: number) => number;
  readonly widthOf: (words: string) => number;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

const GAP_PX = 10;

/**
 * Puts marks into rows so that no words lie over others. The gravest are placed first, so that it is the
 * events that lose their words when room is short. Marks outside the room are left out.
 */
export function placeMarks(marks: readonly ChartMark[], room: MarkRoom): PlacedMark[] {
  const taken: Span[][] = Array.from({ length: room.rows }, () => []);
  const seen = marks
    .map((mark) => ({ mark, x: room.xOf(mark.at) }))
    .filter(({ x }) => x >= room.left && x <= room.right)
    .sort((a, b) => gravity(a.mark) - gravity(b.mark) || a.mark.at - b.mark.at);
  return seen
    .map(({ mark, x }) => ({ mark, x, ...place(spansOf(x, room.widthOf(mark.words), room), taken, room) }))
    .sort((a, b) => a.mark.at - b.mark.at);
}

type Choice = readonly [PlacedMark['words'], Span];

/** Where a mark could lie, best first. */
function spansOf(x: number, wordsWidth: number, room: MarkRoom): Choice[] {
  const half = room.shapeWidth / 2;
  const far = room.shapeWidth + wordsWidth + GAP_PX;
  return [
    ['right', { from: x - half, to: x + far }],
    ['left', { from: x - far, to: x + half }],
    [null, { from: x - half, to: x + half }],
  ];
}

function place(
  choices: readonly Choice[],
  taken: Span[][],
  room: MarkRoom,
): Pick<PlacedMark, 'row' | 'words'> {
  for (const [words, span] of choices) {
    if (words === 'left' && span.from < room.left) continue;
    if (words === 'right' && span.to > room.right) continue;
    const row = taken.findIndex((spans) => spans.every((s) => span.to < s.from || span.from > s.to));
    if (row < 0) continue;
    taken[row]?.push(span);
    return { row, words };
  }
  return { row: 0, words: null };
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
