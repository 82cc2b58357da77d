import type { BatchStatistics, ChartPoint } from '../../../hub/contract/batch-statistics.ts';
import type { ComparedFiring, FiringComparison } from '../../../hub/contract/comparison.ts';
import type { FiringSummary } from '../../../hub/contract/firing.ts';

/** Answers of the hub, made small. */

const summary = (id: string): FiringSummary => ({
  ...{ id, furnaceId: 'oven', title: id, note: '', status: 'finished', simulated: false, startedAt: 0 },
  ...{ endedAt: 1, createdAt: 0, furnaceName: 'Oven', scheduleName: 'Harden', verdict: 'met' },
  ...{ peakCelsius: 810, soakSeconds: 600, alarmCount: 0, marks: [] },
});

const NONE = { soakMeanCelsius: null, peakCelsius: null, soakSeconds: null, rateCelsiusPerHour: null };

function compared(id: string, celsius: (number | null)[], isReference: boolean): ComparedFiring {
  const figures = { ...NONE, soakMeanCelsius: 801, peakCelsius: isReference ? 806 : 810, soakSeconds: 640 };
  const less = {
    ...NONE,
    soakMeanCelsius: 0,
    peakCelsius: isReference ? 0 : 4,
    soakSeconds: isReference ? 0 : -90,
  };
  const difference = { meanCelsius: isReference ? 0 : 2.04, largestCelsius: isReference ? 0 : -5, points: 3 };
  return {
    ...{ firing: summary(id), isReference, celsius, planCelsius: celsius, thinned: false },
    segments: [{ index: 1, figures, toPlan: difference, toReference: difference, figuresToReference: less }],
  };
}

/** A ramp of 100 s and a soak of 200 s; the reference and another. Between the segments nothing is known. */
export const comparison: FiringComparison = {
  by: 'seconds',
  x: [0, 50, 100, 103, 106, 206, 306],
  segments: [
    {
      ...{ index: 0, kind: 'ramp', targetCelsius: 800, toleranceCelsius: 10, from: 0, to: 100, seconds: 100 },
      ...{ first: 0, last: 2 },
    },
    {
      ...{
        index: 1,
        kind: 'soak',
        targetCelsius: 800,
        toleranceCelsius: 10,
        from: 106,
        to: 306,
        seconds: 200,
      },
      ...{ first: 4, last: 6 },
    },
  ],
  referenceId: 'good',
  firings: [
    compared('other', [20, 400, 800, null, 800, 810, null], false),
    compared('good', [20, 420, 800, null, 800, 802, 801], true),
  ],
  envelope: {
    size: 2,
    count: [2, 2, 2, 0, 2, 2, 1],
    lowest: [20, 400, 800, null, 800, 802, 801],
    lowerQuartile: [null, null, null, null, null, null, null],
    median: [20, 410, 800, null, 800, 806, 801],
    upperQuartile: [null, null, null, null, null, null, null],
    highest: [20, 420, 800, null, 800, 810, 801],
  },
  drifts: [
    { segment: 1, figure: 'peakCelsius', firings: 4, perFiring: 2, low: 1.5, high: 2.5, sure: true },
    { segment: 1, figure: 'soakSeconds', firings: 4, perFiring: 3, low: -1, high: 7, sure: false },
  ],
  leftOut: [],
};

const point = (n: number, value: number, rules: ChartPoint['rules'] = []): ChartPoint => ({
  ...{ at: n, value, firingId: `f${n}`, pieceId: null, title: '', marks: [], furnaceId: 'oven' },
  ...{ furnaceName: 'Oven', scheduleVersion: 1, verdict: 'met', rules },
});

export const statistics: BatchStatistics = {
  ...{ measure: 'peak', unit: 'Cel', segment: 1, soaks: [] },
  points: [point(0, 800), point(1, 802), point(2, 830, ['N1', 'W1', 'N5'])],
  chart: {
    stages: [{ from: 0, to: 3, values: { centre: 810.7, lower: 770.8, upper: 850.6 } }],
    values: { centre: 810.7, lower: 770.8, upper: 850.6 },
    ranges: { centre: 15, lower: 0, upper: 20 },
    ...{ movingRanges: [2, 28], sigmaWithin: 13.3, sigmaOverall: 16.8 },
  },
  tolerance: { lower: null, upper: 810 },
  capability: { known: false, reason: 'few-values' },
  changes: [],
  leftOut: { unknown: 2, otherScale: 0, older: true },
};
