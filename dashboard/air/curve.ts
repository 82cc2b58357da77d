import type { AirView } from '../../hub/contract/air.ts';
import type { ReadingSeries } from '../../hub/contract/reading.ts';
import { gapsUntil } from '../feed/series.ts';
import { timeTicks } from '../firings/paper-scale.ts';
import type { LineLook, PlotPicture } from '../heat/plot-types.ts';
import { airWords, LIMIT_WORDS } from '../words/air.ts';
import { number } from '../words/format.ts';
import { timeOfDay } from '../words/time.ts';

/** Carbon monoxide over time, as columns of one grid. Pure. */

export interface CurveChannel {
  readonly id: string;
  readonly label: string;
  readonly staleAfterSeconds: number;
  readonly series: ReadingSeries | null;
}

export interface Stretch {
  /** Epoch ms. */
  readonly from: number;
  readonly to: number;
}

/** Cells of the grid: each keeps the highest reading in it, so that no peak is lost. */
const CELLS = 480;

type Limits = AirView['limits'];

/** The highest reading of each cell; null inside a gap, and where nothing was measured yet. */
export function cellsOf(channel: CurveChannel, window: Stretch, nowMs: number): (number | null)[] {
  const { series } = channel;
  const cells: (number | null)[] = new Array<number | null>(CELLS).fill(null);
  if (series === null) return cells;
  const place = (at: number) => Math.floor(((at - window.from) / (window.to - window.from)) * CELLS);
  for (const { at, value, quality } of series.readings) {
    const index = Math.min(CELLS - 1, place(at));
    if (quality !== 'good' || index < 0 || at > window.to) continue;
    cells[index] = Math.max(cells[index] ?? Number.NEGATIVE_INFINITY, value);
  }
  return carried(cells, goneCells(gapsOf(channel, window, nowMs), place));
}

/** A reading stands until the next, as far as the sensor counts as watching: never through a gap. */
function carried(cells: (number | null)[], gone: ReadonlySet<number>): (number | null)[] {
  let last: number | null = null;
  return cells.map((value, index) => {
    if (gone.has(index)) last = null;
    last = value ?? last;
    return gone.has(index) ? null : last;
  });
}

function goneCells(gaps: readonly Stretch[], place: (at: number) => number): ReadonlySet<number> {
  const gone = new Set<number>();
  for (const { from, to } of gaps) {
    // A gap shorter than a cell still breaks the line.
    const first = Math.max(0, place(from));
    const last = Math.min(CELLS - 1, Math.max(first, place(to) - 1));
    for (let index = first; index <= last; index += 1) gone.add(index);
  }
  return gone;
}

/** Where a channel said nothing usable inside the window, up to now. */
export function gapsOf(
  { series, staleAfterSeconds }: CurveChannel,
  window: Stretch,
  nowMs: number,
): readonly Stretch[] {
  if (series === null) return [window];
  return within(gapsUntil(series, nowMs, staleAfterSeconds * 1000), window);
}

/** What of the stretches lies in the window; `to` null goes on. */
export function within(
  stretches: readonly { readonly from: number; readonly to: number | null }[],
  window: Stretch,
): Stretch[] {
  return stretches
    .map(({ from, to }) => ({
      from: Math.max(from, window.from),
      to: Math.min(to ?? window.to, window.to),
    }))
    .filter(({ from, to }) => to > from);
}

/** Strokes of the sensors in their order; from the third on they are alike, and the readout tells them apart. */
const LOOKS = ['surface', 'core'] as const satisfies readonly LineLook[];

export function lookOf(index: number): 'surface' | 'core' | 'other' {
  return LOOKS[index] ?? 'other';
}

export interface CurveDrawn {
  readonly picture: PlotPicture;
  /** Limits that lie above the picture. */
  readonly beyond: string;
  /** Highest drawn, ppm; null: nothing. */
  readonly highestPpm: number | null;
  readonly atOf: (index: number) => number;
}

export function drawCurve(
  channels: readonly CurveChannel[],
  limits: Limits,
  window: Stretch,
  nowMs: number,
): CurveDrawn {
  const columns = channels.map((channel) => cellsOf(channel, window, nowMs));
  const known = columns.flat().filter((value) => value !== null);
  const highestPpm = known.length === 0 ? null : known.reduce((a, b) => Math.max(a, b));
  const lowest = known.reduce((a, b) => Math.min(a, b), 0);
  const top = topOf(limits, highestPpm ?? 0);
  const drawn = limits.filter(({ limit }) => limit.ppm <= top);
  const length = window.to - window.from;
  const x = Array.from({ length: CELLS }, (_, index) => ((index + 0.5) / CELLS) * (length / 1000));
  return {
    highestPpm,
    beyond: limits
      .filter(({ limit }) => limit.ppm > top)
      .map((one) => limitText(one))
      .join(', '),
    atOf: (index) => window.from + (x[index] ?? 0) * 1000,
    picture: {
      x,
      xScale: { from: 0, to: length / 1000 },
      yScale: { from: Math.min(0, lowest), to: top },
      ticks: timeTicks(window.from, window.to, 6).map((at) => (at - window.from) / 1000),
      tick: (seconds) => timeOfDay(window.from + seconds * 1000),
      marks: [],
      lines: [
        ...drawn.map((one) => ({
          look: 'furnace' as const,
          words: limitText(one),
          y: x.map(() => one.limit.ppm),
        })),
        ...columns.map((y, index) => ({
          look: lookOf(index),
          words: '',
          y,
        })),
      ],
    },
  };
}

/** The two lowest limits are always in the picture; the others as far as the level goes. */
function topOf(limits: Limits, highestPpm: number): number {
  const low = limits.map(({ limit }) => limit.ppm).sort((a, b) => a - b)[1] ?? 50;
  return Math.max(low * 1.2, highestPpm * 1.15);
}

function limitText({ kind, limit }: Limits[number]): string {
  return airWords.limitAt(LIMIT_WORDS[kind].name, number(limit.ppm));
}
