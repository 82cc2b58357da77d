import type { StepName, StepWindow } from '../../hub/contract/compute/steels.ts';
import { lanesOf, type Span, type Stretch, scaleEnds, spreadLabels, yOf } from './scale-geometry.ts';
import { inOrder, type ScaleMark } from './scale-rows.ts';

/** Where every part of the drawn scale stands, for a width. Pure; pixels. */

export interface PlacedMark {
  readonly mark: ScaleMark;
  readonly x: number;
  readonly highY: number;
  readonly y: number;
  readonly lowY: number;
  readonly labelY: number;
  /** Its value lies under the foot of the scale. */
  readonly isBelow: boolean;
}

export interface PlacedBar {
  readonly window: StepWindow;
  readonly x: number;
  readonly highY: number;
  readonly lowY: number;
  readonly tailHighY: number;
  readonly tailLowY: number;
  readonly labelY: number;
}

export interface ScaleLayout {
  readonly width: number;
  readonly height: number;
  readonly isNarrow: boolean;
  readonly stretch: Stretch;
  /** Left edge and width of the rod. */
  readonly rod: { readonly x: number; readonly width: number };
  /** Right end of the lines that carry Ac1 and the upper limit across the windows. */
  readonly guideToX: number;
  /** Where the labels of the marks end and those of the bars begin. */
  readonly markLabelX: number;
  readonly barLabelX: number;
  readonly laneWidth: { readonly mark: number; readonly bar: number };
  readonly marks: readonly PlacedMark[];
  readonly bars: readonly PlacedBar[];
}

interface Measures {
  readonly heightPx: number;
  readonly pitch: number;
  readonly markLane: number;
  readonly barLane: number;
  readonly ruler: number;
  readonly rod: number;
  readonly glow: number;
  readonly leader: number;
  /** Share of the room beside the drawing that the labels of the marks get. */
  readonly markShare: number;
}

const WIDE: Measures = {
  heightPx: 860,
  pitch: 27,
  markLane: 22,
  barLane: 34,
  ruler: 58,
  rod: 40,
  glow: 118,
  leader: 44,
  markShare: 0.52,
};
const NARROW: Measures = {
  heightPx: 940,
  pitch: 20,
  markLane: 11,
  barLane: 14,
  ruler: 38,
  rod: 16,
  glow: 6,
  leader: 10,
  markShare: 0.52,
};
const NARROW_BELOW_PX = 820;
const HEAD_PX = 44;
const FOOT_PX = 26;
/** Bars nearer than this share no lane: their tails would touch. */
const LANE_GAP_CELSIUS = 12;

/** Lays the marks at the left of the rod and the windows at its right. */
export function scaleLayout(
  width: number,
  marks: readonly ScaleMark[],
  windows: readonly StepWindow[],
): ScaleLayout {
  const isNarrow = width < NARROW_BELOW_PX;
  const measures = isNarrow ? NARROW : WIDE;
  const ends = scaleEnds(
    [...marks.map(({ band }) => band.high), ...windows.map((window) => barSpan(window).high)],
    busySpans(marks, windows),
  );
  const stretch: Stretch = { topPx: HEAD_PX, heightPx: measures.heightPx, ...ends };
  const bars = inOrder(windows);
  const markLanes = lanesOf(
    marks.map(({ band }) => band),
    LANE_GAP_CELSIUS,
  );
  const barLanes = lanesOf(bars.map(barSpan), LANE_GAP_CELSIUS);
  const marksWide = (1 + Math.max(-1, ...markLanes)) * measures.markLane;
  const barsWide = (1 + Math.max(-1, ...barLanes)) * measures.barLane;
  const drawn = marksWide + barsWide + measures.ruler + measures.rod + measures.glow + 2 * measures.leader;
  const markLabelX = Math.round(Math.max(0, width - drawn) * measures.markShare);
  const lanesRight = markLabelX + measures.leader + marksWide;
  const rodX = lanesRight + measures.ruler;
  const barsLeft = rodX + measures.rod + measures.glow;
  const labels = { from: HEAD_PX, to: HEAD_PX + measures.heightPx };
  const place = (celsius: number) => yOf(celsius, stretch);
  const markYs = spreadLabels(
    marks.map(({ band }) => place(band.value)),
    measures.pitch,
    labels,
  );
  const barYs = spreadLabels(
    bars.map((bar) => (place(bar.lowCelsius) + place(bar.highCelsius)) / 2),
    measures.pitch,
    labels,
  );
  return {
    width,
    height: HEAD_PX + measures.heightPx + FOOT_PX,
    isNarrow,
    stretch,
    rod: { x: rodX, width: measures.rod },
    markLabelX,
    guideToX: barsLeft + barsWide + measures.leader / 2,
    barLabelX: barsLeft + barsWide + measures.leader,
    laneWidth: { mark: measures.markLane, bar: measures.barLane },
    marks: marks.map((mark, index) => ({
      mark,
      x: lanesRight - ((markLanes[index] ?? 0) + 0.5) * measures.markLane,
      highY: place(mark.band.high),
      y: place(mark.band.value),
      lowY: place(mark.band.low),
      labelY: markYs[index] ?? 0,
      isBelow: mark.band.value < ends.lowCelsius,
    })),
    bars: bars.map((bar, index) => ({
      window: bar,
      x: barsLeft + ((barLanes[index] ?? 0) + 0.5) * measures.barLane,
      highY: place(bar.highCelsius),
      lowY: place(bar.lowCelsius),
      tailHighY: place(bar.highCelsius + bar.uncertaintyCelsius),
      tailLowY: place(bar.lowCelsius - bar.uncertaintyCelsius),
      labelY: barYs[index] ?? 0,
    })),
  };
}

/** Steps that lie apart from where the steel transforms, or reach far beyond it. */
const APART: readonly StepName[] = ['forge', 'temper', 'stress-relief'];
/** Marks below this are about the quench and lie apart too. */
const QUENCH_BELOW_CELSIUS = 500;

function busySpans(marks: readonly ScaleMark[], windows: readonly StepWindow[]): readonly Span[] {
  return [
    ...marks.map(({ band }) => band).filter(({ value }) => value > QUENCH_BELOW_CELSIUS),
    ...windows.filter(({ step }) => !APART.includes(step)).map(barSpan),
  ];
}

function barSpan({ lowCelsius, highCelsius, uncertaintyCelsius }: StepWindow): Span {
  return { low: lowCelsius - uncertaintyCelsius, high: highCelsius + uncertaintyCelsius };
}
