import type { Gap, Reading } from '../../hub/contract/reading.ts';

/** What a curve is: it decides its stroke. */
export type CurveRole = 'measured' | 'other' | 'core' | 'forecast';

/** One curve of a chart: readings in base units, oldest first, and the stretches without any. */
export interface ChartSeries {
  readonly label: string;
  readonly role: CurveRole;
  readonly readings: readonly Pick<Reading, 'at' | 'value' | 'quality'>[];
  readonly gaps: readonly Gap[];
}

/** Something that happened at an instant, with its shape and its words. */
export interface ChartMark {
  readonly at: number;
  readonly shape: 'event' | 'danger' | 'warning' | 'blind';
  readonly words: string;
}

/** Where a curve will lie with 80 %, in base units: drawn as a shade beside it. */
export interface ForetoldPoint {
  readonly at: number;
  readonly celsius: number;
  readonly low: number;
  readonly high: number;
}

/** A stretch of time, epoch ms. */
export interface TimeWindow {
  readonly from: number;
  readonly to: number;
}
