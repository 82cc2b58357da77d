import type uPlot from 'uplot';
import type { Painted, PlotLine, PlotMark } from './plot-types.ts';
import { CUT_LETTERS } from './plot-under.ts';

/** Words on the curves themselves, and marks with theirs. */

/** The names of the lines, each written along its line as heights are along the lines of a map. */
export function drawWords(plot: uPlot, { ink, lines, x }: Painted): void {
  const { ctx } = plot;
  const letter = ink.letterPx * devicePixelRatio;
  ctx.save();
  ctx.font = `600 ${letter}px ${ink.face}`;
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'center';
  ctx.lineJoin = 'round';
  ctx.lineWidth = 5 * devicePixelRatio;
  ctx.setLineDash([]);
  ctx.strokeStyle = ink.ground;
  ctx.fillStyle = ink.ink;
  for (const line of lines) {
    const index = wordsIndex(line);
    if (line.words === '' || index < 0) continue;
    const place = (i: number) => ({
      x: plot.valToPos(x[i] ?? 0, 'x', true),
      y: plot.valToPos(line.y[i] ?? 0, 'y', true),
    });
    const half = ctx.measureText(line.words).width / 2;
    const at = place(index);
    // Words at an edge of the plot move inwards along a line that is level there.
    const inside = Math.min(
      Math.max(at.x, plot.bbox.left + half + letter),
      plot.bbox.left + plot.bbox.width - half,
    );
    const angle = slopeAt(place, index, line.y);
    ctx.save();
    ctx.translate(Math.abs(angle) < 0.1 ? inside : at.x, at.y);
    ctx.rotate(angle);
    ctx.strokeText(line.words, 0, 0);
    ctx.fillText(line.words, 0, 0);
    ctx.restore();
  }
  ctx.restore();
}

type Place = (index: number) => { readonly x: number; readonly y: number };

/** Direction of a line on the screen around one of its points, radians; 0 where it has no neighbours. */
function slopeAt(place: Place, index: number, y: PlotLine['y']): number {
  const known = (i: number) => typeof y[i] === 'number';
  const reach = [4, 3, 2, 1].find((far) => known(index - far) && known(index + far));
  if (reach === undefined) return 0;
  const [before, after] = [place(index - reach), place(index + reach)];
  return Math.atan2(after.y - before.y, after.x - before.x);
}

/** Where a line's words stand: where it first passes the wanted share of its own height. -1: nowhere. */
export function wordsIndex({ y, wordsAt = 0.5 }: Pick<PlotLine, 'y' | 'wordsAt'>): number {
  const known = y.filter((value) => value !== null);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  if (known.length === 0) return -1;
  const wanted = low + (high - low) * wordsAt;
  const first = y.findIndex((value) => value !== null);
  const rises = (y[first] ?? 0) < wanted;
  const index = y.findIndex((value) => value !== null && (rises ? value >= wanted : value <= wanted));
  return index < 0 ? first : index;
}

function spell(
  plot: uPlot,
  ink: Painted['ink'],
  words: string,
  { at, y, off }: { readonly at: number; readonly y: number; readonly off: number },
): void {
  const { ctx } = plot;
  const { left, width } = plot.bbox;
  const fits = at + off + ctx.measureText(words).width < left + width;
  ctx.textAlign = fits ? 'left' : 'right';
  const edge = fits ? at + off : at - off;
  ctx.lineWidth = 5 * devicePixelRatio;
  ctx.setLineDash([]);
  ctx.strokeStyle = ink.ground;
  ctx.strokeText(words, edge, y);
  ctx.fillStyle = ink.ink;
  ctx.fillText(words, edge, y);
}

/** What happens at one place of the foot: a line through everything, a dot, its words. */
export function drawMarks(plot: uPlot, painted: Painted): void {
  for (const mark of painted.marks) drawMark(plot, painted, mark);
}

function drawMark(plot: uPlot, { ink, cut }: Painted, mark: PlotMark): void {
  const { ctx } = plot;
  const { left, top, width, height } = plot.bbox;
  const x = Math.round(plot.valToPos(mark.x, 'x', true));
  if (x < left || x > left + width) return;
  const letter = ink.letterPx * devicePixelRatio;
  const above = cut === undefined ? 0 : (CUT_LETTERS - 0.4) * letter;
  ctx.save();
  ctx.strokeStyle = ink.ink;
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.setLineDash([]);
  ctx.beginPath();
  ctx.moveTo(x, top - above);
  ctx.lineTo(x, top + height);
  ctx.stroke();
  ctx.font = `650 ${letter}px ${ink.face}`;
  ctx.textBaseline = 'middle';
  ctx.lineJoin = 'round';
  spell(plot, ink, mark.words, { at: x, y: top + height - letter * 1.1, off: letter * 0.6 });
  ctx.restore();
}
