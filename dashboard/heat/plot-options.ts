import type uPlot from 'uplot';
import type { Ink } from '../charts/ink.ts';
import { number } from '../words/format.ts';
import type { LineLook, Painted } from './plot-types.ts';
import { CUT_LETTERS, drawCut, drawStretches } from './plot-under.ts';
import { drawMarks, drawWords } from './plot-words.ts';

/** Everything that uPlot is told once; what changes is read through `painted`. */
export interface PlotParts {
  readonly painted: () => Painted;
  readonly looks: readonly LineLook[];
  readonly onCursor: ((index: number | null) => void) | null;
}

const LOOKS: Readonly<Record<LineLook, { readonly strong: boolean; readonly dash?: number[] }>> = {
  surface: { strong: true },
  core: { strong: true, dash: [14, 6] },
  furnace: { strong: false, dash: [10, 7] },
  other: { strong: false },
  edge: { strong: false, dash: [2, 4] },
};

export function plotOptions(parts: PlotParts, size: { width: number; height: number }): uPlot.Options {
  const { painted, looks } = parts;
  const ink = () => painted().ink;
  const { fills = [], logarithmic = false, cut } = painted();
  return {
    ...size,
    legend: { show: false },
    scales: {
      x: { time: false, auto: false, ...(logarithmic ? { distr: 3, log: 10 } : {}) },
      y: { auto: false },
    },
    padding: [cut === undefined ? 8 : ink().letterPx * CUT_LETTERS, ink().letterPx * 1.6, 0, 0],
    cursor: cursorOptions(parts, ink),
    series: [{}, ...looks.map((look) => lineSeries(look, ink))],
    bands: fills.map(([upper, lower]) => ({ series: [upper + 1, lower + 1], fill: () => ink().band })),
    axes: [footAxis(parts, ink), valueAxis(ink)],
    hooks: {
      drawAxes: [(plot) => drawStretches(plot, painted())],
      draw: [
        (plot) => {
          drawCut(plot, painted());
          drawWords(plot, painted());
          drawMarks(plot, painted());
        },
      ],
      setCursor: [(plot) => parts.onCursor?.(plot.cursor.idx ?? null)],
    },
  };
}

function cursorOptions({ onCursor }: PlotParts, ink: () => Ink): uPlot.Cursor {
  const show = onCursor !== null;
  return {
    show,
    y: false,
    drag: { x: false, y: false },
    points: { show, size: 9, fill: () => ink().ground, stroke: () => ink().ink, width: 2 },
  };
}

function lineSeries(look: LineLook, ink: () => Ink): uPlot.Series {
  const { strong, dash } = LOOKS[look];
  return {
    stroke: () => (strong ? ink().ink : look === 'edge' ? ink().line : ink().ink2),
    width: strong ? ink().strokePx : 1.5,
    cap: 'round',
    // Rounded to whole pixels, a slow slope would become a flight of steps.
    pxAlign: 0,
    ...(dash ? { dash } : {}),
    points: { show: false },
  };
}

function axisLook(ink: () => Ink): uPlot.Axis {
  return {
    stroke: () => ink().ink2,
    font: `500 ${ink().letterPx}px ${ink().face}`,
    grid: { stroke: () => ink().faint, width: 1 },
    ticks: { stroke: () => ink().line, width: 1, size: 6 },
    gap: 4,
  };
}

/** Steps that people count time in, s. */
const TIME_STEPS = [
  1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14_400, 21_600, 43_200, 86_400,
];

function footAxis({ painted }: PlotParts, ink: () => Ink): uPlot.Axis {
  const { ticks } = painted();
  return {
    ...axisLook(ink),
    size: ink().letterPx * 1.9,
    space: ink().letterPx * 5,
    incrs: TIME_STEPS,
    ...(ticks === undefined
      ? {}
      : {
          splits: () => [...(painted().ticks ?? [])],
          filter: (_plot: uPlot, splits: number[]) => splits,
        }),
    values: (_plot, splits) => splits.map((value) => painted().tick(value)),
  };
}

function valueAxis(ink: () => Ink): uPlot.Axis {
  return {
    ...axisLook(ink),
    size: ink().letterPx * 3.1,
    space: ink().letterPx * 2.4,
    values: (_plot, splits) => splits.map((value) => number(value)),
  };
}
