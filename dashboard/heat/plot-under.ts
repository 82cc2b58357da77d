import type uPlot from 'uplot';
import type { Painted, PlotCut } from './plot-types.ts';

/** What lies under the curves, and the cut through the piece above them. */

/** Room over the plot for the cut, in letter heights. */
export const CUT_LETTERS = 6.2;
const CUT_GAP_LETTERS = 0.7;
/** Layers from skin to middle that are drawn one by one. */
const LAYERS = 12;

/** The tolerance as a stretch of temperature, and the arrival as a stretch of time, as far as it is known. */
export function drawStretches(plot: uPlot, { ink, band, span }: Painted): void {
  const { ctx } = plot;
  const { left, top, width, height } = plot.bbox;
  ctx.save();
  ctx.fillStyle = ink.band;
  if (band) {
    const [high, low] = [plot.valToPos(band.to, 'y', true), plot.valToPos(band.from, 'y', true)];
    ctx.fillRect(left, Math.max(top, high), width, Math.min(top + height, low) - Math.max(top, high));
  }
  if (span) {
    const [from, to] = [plot.valToPos(span.from, 'x', true), plot.valToPos(span.to, 'x', true)];
    ctx.globalAlpha = 0.6;
    ctx.fillRect(from, top, Math.max(1, Math.min(to, left + width) - from), height);
  }
  ctx.restore();
}

/**
 * Share of the way from core to surface at a share of the way from the middle to the skin: a section that warms
 * evenly holds a parabola, in a plate, a bar and a ball alike.
 */
export function profile(depth: number): number {
  return depth * depth;
}

/** The piece cut through from skin to skin, in the colour it has, over the same time as the curves. */
export function drawCut(plot: uPlot, { ink, cut, x }: Painted): void {
  if (cut === undefined) return;
  const { ctx } = plot;
  const { left, top, width } = plot.bbox;
  const letter = ink.letterPx * devicePixelRatio;
  const height = Math.round((CUT_LETTERS - CUT_GAP_LETTERS - 0.4) * letter);
  const y = Math.round(top - CUT_GAP_LETTERS * letter - height);
  ctx.save();
  for (let index = 0; index + 1 < x.length; index += 1) {
    const from = plot.valToPos(x[index] ?? 0, 'x', true);
    const to = plot.valToPos(x[index + 1] ?? 0, 'x', true);
    drawColumn(ctx, cut, index, { x: from, y, width: to - from + 1, height }, ink.faint);
  }
  ctx.strokeStyle = ink.line;
  ctx.setLineDash([]);
  ctx.lineWidth = devicePixelRatio;
  ctx.strokeRect(left, y, width, height);
  ctx.fillStyle = ink.ink2;
  ctx.font = `500 ${letter * 0.9}px ${ink.face}`;
  ctx.textAlign = 'right';
  ctx.textBaseline = 'middle';
  const edge = left - 8 * devicePixelRatio;
  ctx.fillText(cut.skin, edge, y + letter * 0.4);
  ctx.fillText(cut.middle, edge, y + height / 2);
  ctx.fillText(cut.skin, edge, y + height - letter * 0.4);
  ctx.restore();
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function drawColumn(
  ctx: CanvasRenderingContext2D,
  cut: PlotCut,
  index: number,
  box: Box,
  cold: string,
): void {
  const [core, surface] = [cut.core[index] ?? 0, cut.surface[index] ?? 0];
  const step = box.height / (2 * LAYERS);
  for (let layer = 0; layer < LAYERS; layer += 1) {
    const depth = (layer + 0.5) / LAYERS;
    ctx.fillStyle = cut.colourAt(core + (surface - core) * profile(depth)) ?? cold;
    const middle = box.y + box.height / 2;
    ctx.fillRect(box.x, middle - (layer + 1) * step, box.width, step + 1);
    ctx.fillRect(box.x, middle + layer * step, box.width, step + 1);
  }
}
