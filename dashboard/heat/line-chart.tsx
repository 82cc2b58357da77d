import { useEffect, useRef, useState } from 'preact/hooks';
import { scheme } from '../theme/scheme.ts';
import { heatWords } from '../words/heat.ts';
import { LinePlot } from './plot.ts';
import type { PlotPicture } from './plot-types.ts';

export interface LineChartProps {
  readonly picture: PlotPicture;
  /** What the chart shows, for people who do not see it. */
  readonly summary: string;
  /** The values at an entry of x as one line; left out: the chart is a picture. */
  readonly readout?: (index: number) => string;
}

/** A chart of lines; with a readout it can be followed by mouse, finger and arrow keys. */
export function LineChart({ picture, summary, readout }: LineChartProps) {
  const [index, setIndex] = useState<number | null>(null);
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<LinePlot | null>(null);
  // uPlot is told its lines once: other lines are another chart.
  const shape = `${picture.lines.map((line) => line.look).join()} ${picture.cut === undefined}`;
  useEffect(() => {
    if (host.current === null) return undefined;
    const made = new LinePlot(host.current, picture, readout ? setIndex : null);
    plot.current = made;
    const stop = scheme.subscribe(() => made.restyle());
    return () => {
      stop();
      made.destroy();
      plot.current = null;
    };
  }, [shape]);
  useEffect(() => plot.current?.show(picture));

  if (!readout) return <div ref={host} class="chart heat-chart" role="img" aria-label={summary} />;
  const last = picture.x.length - 1;
  const at = index === null || index > last ? null : index;
  const move = (event: KeyboardEvent) => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    const stride = Math.max(1, Math.round(last / 60));
    const next = Math.min(last, Math.max(0, (at ?? (step > 0 ? -stride : last)) + step * stride));
    setIndex(next);
    plot.current?.point(next);
  };
  const said = at === null ? '' : readout(at);
  return (
    <>
      {/* A cursor that moves along the time is a slider; its value is what the curves say there. */}
      <div
        ref={host}
        class="chart heat-chart"
        role="slider"
        tabIndex={0}
        aria-label={summary}
        aria-valuemin={0}
        aria-valuemax={last}
        aria-valuenow={at ?? 0}
        aria-valuetext={said}
        onKeyDown={move}
      />
      <p class={said === '' ? 'chart-readout heat-unread' : 'chart-readout'}>
        {said === '' ? heatWords.pointAt : said}
      </p>
    </>
  );
}
