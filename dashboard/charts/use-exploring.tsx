import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Button } from '../parts/button.tsx';
import { chartWords } from '../words/charts.ts';
import type { Columns } from './columns.ts';
import { marksNear } from './marks.ts';
import type { ChartPainter } from './painter.ts';
import { chartReadout } from './summary.ts';
import type { ChartMark, ChartSeries, TimeWindow } from './types.ts';
import { between, panned, zoomed } from './window.ts';

interface Explored {
  readonly columns: Columns;
  readonly series: readonly ChartSeries[];
  readonly marks: readonly ChartMark[];
  readonly unit: DisplayUnit;
  readonly window: TimeWindow;
  readonly whole: TimeWindow;
  readonly setZoom: (window: TimeWindow | null) => void;
  readonly painter: RefObject<ChartPainter | null>;
  readonly host: RefObject<HTMLDivElement | null>;
}

export interface Exploring {
  /** Instant under the cursor. */
  readonly at: number | null;
  /** The values there, as text. */
  readonly readout: string;
  readonly select: (from: number, to: number) => void;
  readonly hover: (at: number | null) => void;
  readonly key: (event: KeyboardEvent) => void;
  readonly tools: ComponentChildren;
}

const CLOSER = 0.5;
const WIDER = 2;
/** A key press moves the cursor by this share of the window. */
const KEY_STEP = 1 / 60;
/** About the width of a shape on the screen. */
const NEAR = 1 / 120;

/** Zoom, pan and cursor of a chart, by mouse, wheel, keys and buttons: for every drag there is a press. */
export function useExploring(explored: Explored): Exploring {
  const [at, setAt] = useState<number | null>(null);
  // uPlot is told its handlers once; they must see the newest props.
  const latest = useRef(explored);
  latest.current = explored;
  const { columns, series, marks, unit, window, whole, setZoom, painter } = explored;
  const length = window.to - window.from;

  const zoom = (factor: number) =>
    setZoom(zoomed(window, factor, at ?? (window.from + window.to) / 2, whole));
  const pan = (share: number) => setZoom(panned(window, share, whole));
  const move = (share: number) => {
    const start = at ?? (share > 0 ? window.from : window.to);
    const next = Math.min(whole.to, Math.max(whole.from, start + share * length));
    if (next < window.from || next > window.to) pan(Math.sign(share) * 0.25);
    setAt(next);
    painter.current?.point(next);
  };
  const key = (event: KeyboardEvent) => {
    const act = actionOf(event.key, { zoom, move, reset: () => setZoom(null) });
    if (act === null) return;
    event.preventDefault();
    act();
  };
  useWheel(latest, at);

  return {
    at,
    readout: at === null ? '' : readoutAt(at),
    select: (from, to) => latest.current.setZoom(between(from, to, latest.current.whole)),
    hover: setAt,
    key,
    tools: (
      <>
        <Button onPress={() => zoom(CLOSER)}>{chartWords.closer}</Button>
        <Button onPress={() => zoom(WIDER)}>{chartWords.wider}</Button>
        <Button onPress={() => pan(-0.5)}>{chartWords.earlier}</Button>
        <Button onPress={() => pan(0.5)}>{chartWords.later}</Button>
        <Button onPress={() => setZoom(null)}>{chartWords.whole}</Button>
      </>
    ),
  };

  function readoutAt(instant: number): string {
    const values = chartReadout(columns, series, instant, { reachMs: length * NEAR, unit });
    return [values, ...marksNear(marks, instant, length * NEAR).map((mark) => mark.words)].join(' · ');
  }
}

interface Actions {
  readonly zoom: (factor: number) => void;
  readonly move: (share: number) => void;
  readonly reset: () => void;
}

function actionOf(key: string, { zoom, move, reset }: Actions): (() => void) | null {
  switch (key) {
    case '+':
    case '=':
      return () => zoom(CLOSER);
    case '-':
    case '−':
      return () => zoom(WIDER);
    case 'ArrowLeft':
      return () => move(-KEY_STEP);
    case 'ArrowRight':
      return () => move(KEY_STEP);
    case '0':
    case 'Escape':
      return reset;
    default:
      return null;
  }
}

/** The wheel zooms only with Ctrl or while the chart has the focus: a page must stay scrollable over it. */
function useWheel(latest: RefObject<Explored>, at: number | null): void {
  const pointed = useRef(at);
  pointed.current = at;
  useEffect(() => {
    const wheel = (event: WheelEvent) => {
      const explored = latest.current;
      const chart = explored?.host.current;
      if (!explored || !chart || pointed.current === null) return;
      if (!(event.target instanceof Node && chart.contains(event.target))) return;
      if (!event.ctrlKey && chart !== document.activeElement) return;
      event.preventDefault();
      const { window, whole, setZoom } = explored;
      const sideways = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY);
      setZoom(
        sideways
          ? panned(window, Math.sign(event.deltaX + event.deltaY) * 0.1, whole)
          : zoomed(window, event.deltaY < 0 ? 0.8 : 1.25, pointed.current, whole),
      );
    };
    document.addEventListener('wheel', wheel, { passive: false });
    return () => document.removeEventListener('wheel', wheel);
  }, [latest]);
}
