import type { Ink } from '../charts/ink.ts';

/** What the charts of this page draw: lines over time or over thickness, with a few words on them. */

/** How a line is drawn: the same strokes mean the same things as on the wall. */
export type LineLook = 'surface' | 'core' | 'furnace' | 'other' | 'edge';

export interface PlotLine {
  readonly look: LineLook;
  /** Written on the line itself; empty: not. */
  readonly words: string;
  /** Where along the drawn line the words stand, 0 to 1 of its height. */
  readonly wordsAt?: number;
  /** One value an entry of `x`; null where nothing is known. */
  readonly y: readonly (number | null)[];
}

export interface PlotMark {
  readonly x: number;
  readonly words: string;
}

/** The piece cut through, from skin to skin, over the same x. */
export interface PlotCut {
  readonly core: readonly number[];
  readonly surface: readonly number[];
  /** CSS colour at a temperature in °C; null while steel does not glow. */
  readonly colourAt: (celsius: number) => string | null;
  readonly skin: string;
  readonly middle: string;
}

export interface PlotScale {
  readonly from: number;
  readonly to: number;
}

export interface PlotPicture {
  /** Rising strictly. */
  readonly x: readonly number[];
  readonly lines: readonly PlotLine[];
  readonly xScale: PlotScale;
  readonly yScale: PlotScale;
  /** Values of the ticks along the foot; left out: evenly. */
  readonly ticks?: readonly number[];
  readonly tick: (value: number) => string;
  /** A tolerance: the stretch of y that counts as there. */
  readonly band?: PlotScale | undefined;
  /** The stretch of x in which something happens, as far as it is known. */
  readonly span?: PlotScale | undefined;
  /** Pairs of lines with the room between them filled. */
  readonly fills?: readonly (readonly [upper: number, lower: number])[];
  readonly marks: readonly PlotMark[];
  readonly cut?: PlotCut | undefined;
  readonly logarithmic?: boolean;
}

export interface Painted extends PlotPicture {
  readonly ink: Ink;
}
