import uPlot from 'uplot';
import type { Columns } from './columns.ts';
import { valueRange } from './columns.ts';
import { markRows, type Overlay } from './draw.ts';
import { type Ink, readInk } from './ink.ts';
import { type PlotParts, plotOptions } from './options.ts';
import type { TimeWindow } from './types.ts';

/** What a chart shows at one moment. */
export interface Picture extends Omit<Overlay, 'ink'> {
  readonly columns: Columns;
  readonly window: TimeWindow;
}

/**
 * Owns one uPlot. Setters only mark what changed; one commit a frame paints, however many readings came.
 */
export class ChartPainter {
  readonly #host: HTMLElement;
  readonly #plot: uPlot;
  readonly #resize: ResizeObserver;
  #picture: Picture;
  #ink: Ink;
  #frame: number | null = null;
  #dataChanged = true;

  constructor(host: HTMLElement, picture: Picture, parts: Omit<PlotParts, 'overlay'>) {
    this.#host = host;
    this.#picture = picture;
    this.#ink = readInk(host);
    const overlay = () => ({ ...this.#picture, ink: this.#ink });
    this.#plot = new uPlot(plotOptions({ ...parts, overlay }, sizeOf(host)), [[]], host);
    this.#resize = new ResizeObserver(() => this.#mark());
    this.#resize.observe(host);
    this.#mark();
    // Letters drawn before the bundled face has loaded would keep the fallback's shape.
    void document.fonts.ready.then(() => this.restyle());
  }

  show(picture: Picture): void {
    this.#dataChanged ||= picture.columns !== this.#picture.columns;
    this.#picture = picture;
    this.#mark();
  }

  /** The scheme or the size of letters changed. */
  restyle(): void {
    this.#ink = readInk(this.#host);
    this.#mark();
  }

  /** Puts the cursor on an instant (from the keyboard); null takes it away. */
  point(at: number | null): void {
    const left = at === null ? -10 : this.#plot.valToPos(at, 'x');
    this.#plot.setCursor({ left, top: at === null ? -10 : 0 }, false);
  }

  destroy(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
    this.#resize.disconnect();
    this.#plot.destroy();
  }

  /** Share of the height that the rows of marks take. */
  #headroom(height: number): number {
    if (this.#picture.marks.length === 0) return 0;
    const letters = height / this.#ink.letterPx;
    return Math.min(0.4, (markRows(letters) * 1.4) / letters);
  }

  #mark(): void {
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      this.#commit();
    });
  }

  #commit(): void {
    const { columns, window } = this.#picture;
    const size = sizeOf(this.#host);
    const range = valueRange(columns, window, this.#headroom(size.height));
    this.#plot.batch(() => {
      if (size.width !== this.#plot.width || size.height !== this.#plot.height) this.#plot.setSize(size);
      if (this.#dataChanged) this.#plot.setData(aligned(columns), false);
      this.#plot.setScale('x', { min: window.from, max: window.to });
      this.#plot.setScale('y', { min: range.low, max: range.high });
    });
    this.#dataChanged = false;
    this.#plot.redraw(false, true);
  }
}

function aligned(columns: Columns): uPlot.AlignedData {
  return [columns.at, columns.high, columns.low, columns.plan, ...columns.curves];
}

function sizeOf(host: HTMLElement): { width: number; height: number } {
  return { width: Math.max(80, host.clientWidth), height: Math.max(60, host.clientHeight) };
}
