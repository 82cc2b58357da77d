import type { BatchStatistics, ChartPoint } from '../../hub/contract/batch-statistics.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { differenceFromBase, fromBase } from '../../hub/contract/units.ts';
import { number, unitNamed } from '../words/format.ts';
import { batchWords, NO_CAPABILITY_WORDS, RULE_WORDS } from '../words/review.ts';
import { type ControlPicture, numbered } from './control-geometry.ts';

/** What batch statistics say, in the user's unit. Pure. */

type Unit = BatchStatistics['unit'];
const SECONDS_PER_MINUTE = 60;

/** A value in the unit that is shown: the user's degrees, minutes, HRC. */
export function shownValue(value: number, unit: Unit, display: DisplayUnit): number {
  switch (unit) {
    case 'Cel':
      return fromBase(value, unitNamed(display));
    case 's':
      return value / SECONDS_PER_MINUTE;
    case 'HRC':
      return value;
    default:
      return unit satisfies never;
  }
}

/** The size of a step or spread, in the unit that is shown. */
export function shownSize(size: number, unit: Unit, display: DisplayUnit): number {
  return unit === 'Cel' ? differenceFromBase(size, unitNamed(display)) : shownValue(size, unit, display);
}

export function unitLabel(unit: Unit, display: DisplayUnit): string {
  switch (unit) {
    case 'Cel':
      return unitNamed(display).label;
    case 's':
      return 'min';
    case 'HRC':
      return 'HRC';
    default:
      return unit satisfies never;
  }
}

/** With one decimal: neither a thermocouple nor a hardness tester says more of one piece. */
export function valueSaid(value: number, unit: Unit, display: DisplayUnit): string {
  return `${number(shownValue(value, unit, display), 1)} ${unitLabel(unit, display)}`;
}

function shiftSaid(value: number, unit: Unit, display: DisplayUnit): string {
  const size = shownSize(value, unit, display);
  return `${size >= 0.05 ? '+' : ''}${number(size, 1)} ${unitLabel(unit, display)}`;
}

/** One sentence on whether the process is in control. */
export function controlSaid({ points, chart }: BatchStatistics): string {
  if (points.length === 0) return batchWords.none;
  if (chart === null) return batchWords.one;
  const marked = points.filter(({ rules }) => rules.length > 0).length;
  const steps = chart.movingRanges.slice(chart.stages.at(-1)?.from ?? 0);
  if (marked === 0 && steps.some((step) => step > chart.ranges.upper)) return batchWords.wideStep;
  return marked === 0 ? batchWords.inControl(points.length) : batchWords.outOfControl(marked, points.length);
}

/** That the limits begin anew at a known change; empty when they never do. */
export function stagesSaid({ chart }: Pick<BatchStatistics, 'chart'>): string {
  const stages = chart?.stages.length ?? 1;
  return stages > 1 ? batchWords.stages(stages) : '';
}

export function limitsSaid({ chart, unit }: BatchStatistics, display: DisplayUnit): string {
  if (chart === null) return '';
  const { centre, lower, upper } = chart.values;
  const said = (value: number) => valueSaid(value, unit, display);
  return batchWords.centre(said(centre), said(lower), said(upper));
}

/** Cp and the rest with two decimals, or why they are not told. */
export function capabilitySaid({ capability }: BatchStatistics): string {
  if (!capability.known) return NO_CAPABILITY_WORDS[capability.reason];
  const index = (value: number | null) => (value === null ? batchWords.oneSided : number(value, 2));
  const { within, overall } = capability;
  return batchWords.capable(
    index(within.potential),
    index(within.actual),
    index(overall.potential),
    index(overall.actual),
  );
}

export function toleranceSaid({ tolerance, unit }: BatchStatistics, display: DisplayUnit): string {
  if (tolerance === null) return '';
  const { lower, upper } = tolerance;
  const said = (value: number) => valueSaid(value, unit, display);
  if (lower !== null && upper !== null)
    return batchWords.tolerance(batchWords.between(said(lower), said(upper)));
  if (upper !== null) return batchWords.tolerance(batchWords.atMost(said(upper)));
  return lower === null ? '' : batchWords.tolerance(batchWords.atLeast(said(lower)));
}

/** Why a point is marked, each test once. */
export function rulesSaid({ rules }: Pick<ChartPoint, 'rules'>): string {
  return [...new Set(rules.map((rule) => RULE_WORDS[rule]))].join('; ');
}

export function shiftWords(
  shift: BatchStatistics['changes'][number]['shift'],
  unit: Unit,
  display: DisplayUnit,
): string {
  if (shift === null) return batchWords.noShift;
  const said = (value: number) => shiftSaid(value, unit, display);
  return batchWords.shift(said(shift.value), said(shift.low), said(shift.high), shift.sure);
}

/** What is not in the chart, sentence by sentence. */
export function leftOutSaid({ leftOut }: BatchStatistics): string[] {
  const { unknown, otherScale, older } = leftOut;
  return [
    ...(unknown > 0 ? [batchWords.unknownLeft(unknown)] : []),
    ...(otherScale > 0 ? [batchWords.otherScale(otherScale)] : []),
    ...(older ? [batchWords.older] : []),
  ];
}

export function individualsPicture(statistics: BatchStatistics, display: DisplayUnit): ControlPicture {
  const { points, chart, tolerance, changes, unit } = statistics;
  const shown = (value: number) => shownValue(value, unit, display);
  const limit = (value: number | null) => (value === null ? null : shown(value));
  return {
    values: points.map(({ value }) => shown(value)),
    lines: (chart?.stages ?? []).map(({ from, to, values }) => ({
      ...{ from, to, centre: shown(values.centre) },
      ...{ lower: shown(values.lower), upper: shown(values.upper) },
    })),
    tolerance: tolerance && { lower: limit(tolerance.lower), upper: limit(tolerance.upper) },
    changes: changes.map(({ index }) => index),
    marks: numbered(points.map(({ rules }) => rules.length > 0)),
  };
}

/** Moving ranges: the first value has none before it, so that the row begins at the second. */
export function rangesPicture(statistics: BatchStatistics, display: DisplayUnit): ControlPicture | null {
  const { chart, unit } = statistics;
  if (chart === null) return null;
  const shown = (size: number) => shownSize(size, unit, display);
  const { centre, lower, upper } = chart.ranges;
  return {
    values: chart.movingRanges.map(shown),
    lines: [
      {
        ...{ from: 0, to: chart.movingRanges.length, centre: shown(centre) },
        ...{ lower: shown(lower), upper: shown(upper) },
      },
    ],
    tolerance: null,
    changes: [],
    marks: numbered(chart.movingRanges.map((range) => range > upper)),
  };
}
