import uPlot from 'uplot';
import { type Ink, readInk } from '../charts/ink.ts';
import { plotOptions } from './plot-options.ts';
import type { PlotPicture } from './plot-types.ts';

/** Owns one uPlot of this page. A new picture is drawn on the next frame. */
export class LinePlot {
  readonly #host: HTMLElement;
  readonly #plot: uPlot;
  readonly #resize: ResizeObserver;
  #picture: PlotPicture;
  #ink: Ink;
  #frame: number | null = null;

  constructor(host: HTMLElement, picture: PlotPicture, onCursor: ((index: number | null) => void) | null) {
    this.#host = host;
    this.#picture = picture;
    this.#ink = readInk(host);
    const painted = () => ({ ...this.#picture, ink: this.#ink });
    const looks = picture.lines.map((line) => line.look);
    this.#plot = new uPlot(plotOptions({ painted, looks, onCursor }, sizeOf(host)), aligned(picture), host);
    this.#resize = new ResizeObserver(() => this.#mark());
    this.#resize.observe(host);
    this.#mark();
    // Letters drawn before the bundled face has loaded would keep the fallback's shape.
    void document.fonts.ready.then(() => this.restyle());
  }

  show(picture: PlotPicture): void {
    this.#picture = picture;
    this.#mark();
  }

  /** The scheme or the size of letters changed. */
  restyle(): void {
    this.#ink = readInk(this.#host);
    this.#mark();
  }

  /** Puts the cursor on an entry of x; null takes it away. */
  point(index: number | null): void {
    const at = index === null ? undefined : this.#picture.x[index];
    const left = at === undefined ? -10 : this.#plot.valToPos(at, 'x');
    this.#plot.setCursor({ left, top: at === undefined ? -10 : 0 }, false);
  }

  destroy(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
    this.#resize.disconnect();
    this.#plot.destroy();
  }

  #mark(): void {
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      this.#commit();
    });
  }

  #commit(): void {
    const { xScale, yScale } = this.#picture;
    const size = sizeOf(this.#host);
    this.#plot.batch(() => {
      if (size.width !== this.#plot.width || size.height !== this.#plot.height) this.#plot.setSize(size);
      this.#plot.setData(aligned(this.#picture), false);
      this.#plot.setScale('x', { min: xScale.from, max: xScale.to });
      this.#plot.setScale('y', { min: yScale.from, max: yScale.to });
    });
    this.#plot.redraw(false, true);
  }
}

function aligned({ x, lines }: PlotPicture): uPlot.AlignedData {
  return [[...x], ...lines.map((line) => [...line.y])];
}

function sizeOf(host: HTMLElement): { width: number; height: number } {
  return { width: Math.max(80, host.clientWidth), height: Math.max(60, host.clientHeight) };
}
