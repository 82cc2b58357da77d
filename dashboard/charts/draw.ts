import type uPlot from 'uplot';
import type { Gap } from '../../hub/contract/reading.ts';
import { chartWords } from '../words/charts.ts';
import type { Ink } from './ink.ts';
import { type PlacedMark, placeMarks } from './marks.ts';
import type { ChartMark, ForetoldPoint } from './types.ts';

/** What is drawn on the canvas beside the curves: gaps, the now-line, marks. */

export interface Overlay {
  readonly ink: Ink;
  readonly gaps: readonly Gap[];
  readonly marks: readonly ChartMark[];
  /** Epoch ms; null: none. */
  readonly now: number | null;
  /** The band of the forecast in the display unit; empty: none. */
  readonly foretold: readonly Pick<ForetoldPoint, 'at' | 'low' | 'high'>[];
}

/** Under the curves: gaps as hatched stretches, so that "nothing measured" is a thing one sees. */
export function drawUnder(plot: uPlot, { ink, gaps, foretold }: Overlay): void {
  drawForetold(plot, ink, foretold);
  const { ctx } = plot;
  const { top, height, left, width } = plot.bbox;
  for (const gap of gaps) {
    const from = Math.max(left, plot.valToPos(gap.from, 'x', true));
    const to = Math.min(left + width, plot.valToPos(gap.to, 'x', true));
    if (to <= from) continue;
    ctx.save();
    ctx.beginPath();
    ctx.rect(from, top, to - from, height);
    ctx.clip();
    ctx.strokeStyle = ink.line;
    ctx.lineWidth = pixels(1);
    ctx.beginPath();
    for (let x = from - height; x < to; x += pixels(ink.letterPx * 0.7)) {
      ctx.moveTo(x, top + height);
      ctx.lineTo(x + height, top);
    }
    ctx.stroke();
    ctx.restore();
  }
}

/** The band of the forecast: a shade, since it is no measurement, and lines would read as one. */
function drawForetold(plot: uPlot, ink: Ink, points: Overlay['foretold']): void {
  const { ctx } = plot;
  const { top, height, left, width } = plot.bbox;
  if (points.length < 2) return;
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, width, height);
  ctx.clip();
  ctx.beginPath();
  for (const { at, high } of points) ctx.lineTo(plot.valToPos(at, 'x', true), plot.valToPos(high, 'y', true));
  for (const { at, low } of points.toReversed())
    ctx.lineTo(plot.valToPos(at, 'x', true), plot.valToPos(low, 'y', true));
  ctx.closePath();
  ctx.globalAlpha = 0.35;
  ctx.fillStyle = ink.ink2;
  ctx.fill();
  ctx.restore();
}

/** Over the curves: the now-line, then the marks at the top. */
export function drawOver(plot: uPlot, overlay: Overlay): void {
  if (overlay.now !== null) drawNow(plot, overlay.ink, overlay.now);
  drawMarks(plot, overlay);
}

function drawNow(plot: uPlot, ink: Ink, now: number): void {
  const { ctx } = plot;
  const { top, height, left, width } = plot.bbox;
  const x = Math.round(plot.valToPos(now, 'x', true));
  if (x < left || x > left + width) return;
  ctx.save();
  ctx.fillStyle = ink.ink;
  ctx.fillRect(x - pixels(1), top, pixels(2), height);
  ctx.font = font(ink, 600);
  ctx.textBaseline = 'bottom';
  const wide = ctx.measureText(chartWords.now).width;
  const fits = x + pixels(6) + wide < left + width;
  ctx.textAlign = fits ? 'left' : 'right';
  ctx.fillText(chartWords.now, fits ? x + pixels(6) : x - pixels(6), top + height - pixels(4));
  ctx.restore();
}

function drawMarks(plot: uPlot, { ink, marks }: Overlay): void {
  const { ctx } = plot;
  const { left, width, top, height } = plot.bbox;
  const size = pixels(ink.letterPx);
  ctx.save();
  ctx.font = font(ink, 500);
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'left';
  const placed = placeMarks(marks, {
    left,
    right: left + width,
    rows: markRows(height / size),
    shapeWidth: size,
    xOf: (at) => plot.valToPos(at, 'x', true),
    widthOf: (words) => ctx.measureText(words).width,
  });
  const box = { size, top, height };
  // All lines first: a line must not run through the words of its neighbour.
  for (const place of placed) drawMarkLine(ctx, ink, place, box);
  for (const place of placed) drawMark(ctx, ink, place, box);
  ctx.restore();
}

/** How many rows of marks a plot of this many letter heights has room for. */
export function markRows(letterHeights: number): number {
  return Math.max(1, Math.min(3, Math.floor(letterHeights / 5)));
}

interface MarkBox {
  readonly size: number;
  readonly top: number;
  readonly height: number;
}

function rowY({ row }: PlacedMark, { size, top }: MarkBox): number {
  return top + size * 0.8 + row * size * 1.35;
}

function drawMarkLine(ctx: CanvasRenderingContext2D, ink: Ink, placed: PlacedMark, box: MarkBox): void {
  ctx.strokeStyle = ink.line;
  ctx.lineWidth = pixels(1);
  ctx.beginPath();
  ctx.moveTo(placed.x, rowY(placed, box));
  ctx.lineTo(placed.x, box.top + box.height);
  ctx.stroke();
}

function drawMark(ctx: CanvasRenderingContext2D, ink: Ink, placed: PlacedMark, box: MarkBox): void {
  const { mark, x, words } = placed;
  const { size } = box;
  const y = rowY(placed, box);
  drawShape(ctx, ink, mark.shape, x, y, size * 0.42);
  if (words === null) return;
  ctx.textAlign = words === 'right' ? 'left' : 'right';
  const edge = words === 'right' ? x + size * 0.75 : x - size * 0.75;
  ctx.lineWidth = pixels(5);
  ctx.lineJoin = 'round';
  ctx.strokeStyle = ink.ground;
  ctx.strokeText(mark.words, edge, y);
  ctx.fillStyle = ink.ink;
  ctx.fillText(mark.words, edge, y);
}

/** The same outlines as the screen's shapes: a plate for danger, a triangle for warning, a struck ring. */
function drawShape(
  ctx: CanvasRenderingContext2D,
  ink: Ink,
  shape: ChartMark['shape'],
  x: number,
  y: number,
  radius: number,
): void {
  ctx.beginPath();
  ctx.strokeStyle = ink.ink;
  ctx.lineWidth = pixels(1.5);
  switch (shape) {
    case 'danger':
      corners(ctx, x, y, radius * 1.1, 8, Math.PI / 8);
      ctx.fillStyle = ink.danger;
      break;
    case 'warning':
      corners(ctx, x, y, radius * 1.3, 3, -Math.PI / 2);
      ctx.fillStyle = ink.warning;
      break;
    case 'blind':
      ctx.arc(x, y, radius, 0, 2 * Math.PI);
      ctx.moveTo(x - radius * 1.4, y + radius * 1.4);
      ctx.lineTo(x + radius * 1.4, y - radius * 1.4);
      ctx.fillStyle = ink.ground;
      break;
    case 'event':
      ctx.arc(x, y, radius * 0.6, 0, 2 * Math.PI);
      ctx.fillStyle = ink.ink2;
      break;
    default:
      throw shape satisfies never;
  }
  ctx.fill();
  ctx.stroke();
}

function corners(
  ctx: CanvasRenderingContext2D,
  x: number,
  y: number,
  radius: number,
  count: number,
  turn: number,
): void {
  for (let corner = 0; corner < count; corner += 1) {
    const angle = turn + (corner * 2 * Math.PI) / count;
    const [px, py] = [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    if (corner === 0) ctx.moveTo(px, py);
    else ctx.lineTo(px, py);
  }
  ctx.closePath();
}

/** CSS pixels as canvas pixels. */
function pixels(css: number): number {
  return css * devicePixelRatio;
}

function font(ink: Ink, weight: number): string {
  return `${weight} ${pixels(ink.letterPx)}px ${ink.face}`;
}
