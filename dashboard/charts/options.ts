import type uPlot from 'uplot';
import { number } from '../words/format.ts';
import { duration, timeOfDay, timeOfDaySeconds } from '../words/time.ts';
import { drawOver, drawUnder, type Overlay } from './draw.ts';
import type { Ink } from './ink.ts';
import type { CurveRole } from './types.ts';

/** Everything that uPlot is told once. Colours are functions, so that a change of scheme needs no new chart. */
export interface PlotParts {
  readonly roles: readonly CurveRole[];
  readonly overlay: () => Overlay;
  readonly interactive: boolean;
  /** A bare curve without a clock: hours from the start along the foot. */
  readonly fromStart: boolean;
  readonly onSelect: (from: number, to: number) => void;
  readonly onCursor: (at: number | null) => void;
}

const MINUTE_MS = 60_000;

export function plotOptions(parts: PlotParts, size: { width: number; height: number }): uPlot.Options {
  const ink = () => parts.overlay().ink;
  return {
    ...size,
    ms: 1,
    legend: { show: false },
    scales: { x: { time: !parts.fromStart, auto: false }, y: { auto: false } },
    // Half of the last time on the axis stands right of the plot.
    padding: [8, ink().letterPx * 2, 0, 0],
    cursor: cursorOptions(parts, ink),
    series: [{}, ...planSeries(ink), ...parts.roles.map((role) => curveSeries(role, ink))],
    bands: [{ series: [1, 2], fill: () => ink().band }],
    axes: [timeAxis(parts, ink), valueAxis(ink)],
    hooks: {
      drawAxes: [(plot) => drawUnder(plot, parts.overlay())],
      draw: [(plot) => drawOver(plot, parts.overlay())],
      setSelect: [
        (plot) => {
          const { left, width } = plot.select;
          if (width < 8) return;
          parts.onSelect(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'));
          plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        },
      ],
      setCursor: [
        (plot) => {
          const { left = -1 } = plot.cursor;
          parts.onCursor(left < 0 ? null : plot.posToVal(left, 'x'));
        },
      ],
    },
  };
}

function cursorOptions({ interactive }: PlotParts, ink: () => Ink): uPlot.Cursor {
  return {
    show: interactive,
    y: false,
    drag: { x: interactive, y: false, setScale: false },
    points: { show: interactive, size: 10, fill: () => ink().ground, stroke: () => ink().ink, width: 3 },
  };
}

/** Upper and lower edge of the tolerance band, then the plan itself. */
function planSeries(ink: () => Ink): uPlot.Series[] {
  const edge: uPlot.Series = { stroke: () => ink().line, width: 1, points: { show: false } };
  const plan: uPlot.Series = {
    stroke: () => ink().ink2,
    width: 2,
    dash: [10, 7],
    points: { show: false },
  };
  return [edge, edge, plan];
}

const CURVES: Readonly<Record<CurveRole, { strong: boolean; dash?: number[] }>> = {
  measured: { strong: true },
  other: { strong: false },
  core: { strong: true, dash: [14, 6] },
  forecast: { strong: true, dash: [3, 7] },
};

function curveSeries(role: CurveRole, ink: () => Ink): uPlot.Series {
  const { strong, dash } = CURVES[role];
  return {
    stroke: () => (strong ? ink().ink : ink().ink2),
    width: strong ? ink().strokePx : 1.5,
    cap: 'round',
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

function timeAxis({ fromStart }: PlotParts, ink: () => Ink): uPlot.Axis {
  return {
    ...axisLook(ink),
    size: ink().letterPx * 1.9,
    space: ink().letterPx * (fromStart ? 6.5 : 5),
    values: (_plot, splits, _axis, _space, step) => splits.map((at) => timeLabel(at, step, fromStart)),
    ...(fromStart ? { incrs: [5, 10, 15, 30, 60, 120, 240, 360, 720, 1440].map((m) => m * MINUTE_MS) } : {}),
  };
}

function timeLabel(at: number, stepMs: number, fromStart: boolean): string {
  if (!fromStart) return stepMs < MINUTE_MS ? timeOfDaySeconds(at) : timeOfDay(at);
  return duration(at / 1000);
}

function valueAxis(ink: () => Ink): uPlot.Axis {
  return {
    ...axisLook(ink),
    size: ink().letterPx * 3.1,
    space: ink().letterPx * 2.4,
    values: (_plot, splits) => splits.map((value) => number(value)),
  };
}
