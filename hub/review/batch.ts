import {
  type BatchCapability,
  type BatchChart,
  type ChartPoint,
  LEAST_FOR_CAPABILITY,
  type MarkedChange,
  type NoCapability,
} from '../contract/batch-statistics.ts';
import { capability, type ToleranceLimits } from '../physics/statistics/capability.ts';
import { stagedChart } from '../physics/statistics/changes.ts';
import { type IndividualsChart, individualsChart } from '../physics/statistics/individuals-chart.ts';
import { NELSON_RULES, ruleFindings, WESTERN_ELECTRIC_RULES } from '../physics/statistics/run-rules.ts';

/** A row of values charted: the arithmetic is of hub/physics/statistics, what is asked of it stands here. */

export type Charted = Omit<ChartPoint, 'rules'>;
export type Change = Pick<MarkedChange, 'at' | 'kind' | 'text'>;

export interface BatchQuestion {
  /** The oldest first. */
  readonly points: readonly Charted[];
  readonly tolerance: ToleranceLimits | null;
  readonly changes: readonly Change[];
}

export interface BatchAnswer {
  readonly points: readonly ChartPoint[];
  readonly chart: BatchChart | null;
  readonly capability: BatchCapability;
  readonly changes: readonly MarkedChange[];
}

const LEAST_FOR_CHART = 2;
/** Fewer values on a side of a change have no limits of their own. Ours. */
const LEAST_FOR_STAGE = 5;

/** Charts the points, tests them, and says what they are capable of, or why that cannot be said. */
export function batchOf({ points, tolerance, changes }: BatchQuestion): BatchAnswer {
  const marked = markChanges(points, changes);
  if (points.length < LEAST_FOR_CHART) {
    const bare = points.map((point) => ({ ...point, rules: [] }));
    const reason: NoCapability = tolerance === null ? 'no-tolerance' : 'few-values';
    return { points: bare, chart: null, capability: { known: false, reason }, changes: marked };
  }
  const stages = stagesOf(points, marked);
  const ruled = stages.flatMap(({ from, to, chart }) => withRules(points.slice(from, to), chart));
  return {
    points: ruled,
    chart: shown(points, stages),
    capability: capabilityOf(ruled, stages, tolerance, marked),
    changes: marked,
  };
}

interface Stage {
  readonly from: number;
  readonly to: number;
  readonly chart: IndividualsChart;
}

/**
 * Limits begin anew where a known change shifted the mean for sure: a cause that is known is no special cause to be
 * looked for, and limits over both sides would mark half of the values. An unknown shift is never split off.
 */
function stagesOf(points: readonly Charted[], changes: readonly MarkedChange[]): readonly Stage[] {
  const sure = changes.filter(({ shift }) => shift?.sure).map(({ index }) => index);
  const edges = [0];
  for (const edge of sure) {
    const room = points.length - edge >= LEAST_FOR_STAGE;
    if (room && edge - (edges.at(-1) ?? 0) >= LEAST_FOR_STAGE) edges.push(edge);
  }
  return edges.map((from, at) => {
    const to = edges[at + 1] ?? points.length;
    return { from, to, chart: individualsChart(points.slice(from, to).map(({ value }) => value)) };
  });
}

/** Each point with the tests whose pattern it completes. */
function withRules(points: readonly Charted[], { sigmas }: IndividualsChart): ChartPoint[] {
  const found = ruleFindings(sigmas, [...NELSON_RULES, ...WESTERN_ELECTRIC_RULES]);
  return points.map((point, at) => ({
    ...point,
    rules: found.filter(({ index }) => index === at).map(({ rule }) => rule),
  }));
}

function shown(points: readonly Charted[], stages: readonly Stage[]): BatchChart | null {
  const last = stages.at(-1)?.chart;
  if (last === undefined) return null;
  const { values, ranges, sigmaWithin, sigmaOverall } = last;
  return {
    stages: stages.map(({ from, to, chart }) => ({ from, to, values: chart.values })),
    ...{ values, ranges, sigmaWithin, sigmaOverall },
    movingRanges: points.slice(1).map(({ value }, at) => Math.abs(value - (points[at]?.value ?? value))),
  };
}

/**
 * Capability speaks of the future, so it is told only of a process that shows no special cause and of values enough:
 * one furnace, one tolerance, 25 values or more, no test fired, no moving range beyond its limit.
 */
function capabilityOf(
  points: readonly ChartPoint[],
  stages: readonly Stage[],
  tolerance: ToleranceLimits | null,
  changes: readonly MarkedChange[],
): BatchCapability {
  const last = stages.at(-1);
  if (tolerance === null || last === undefined) return { known: false, reason: 'no-tolerance' };
  const since = changes.filter(({ index }) => index > last.from);
  const reason = whyNot(points.slice(last.from), last.chart, since);
  if (reason !== null) return { known: false, reason };
  const { within, overall } = capability(last.chart, tolerance);
  return {
    known: true,
    within: { potential: within.potential, actual: within.actual },
    overall: { potential: overall.potential, actual: overall.actual },
  };
}

function whyNot(
  points: readonly ChartPoint[],
  { movingRanges, ranges, sigmaWithin }: IndividualsChart,
  changes: readonly MarkedChange[],
): NoCapability | null {
  if (new Set(points.map(({ furnaceId }) => furnaceId)).size > 1) return 'several-furnaces';
  if (changes.some(({ kind }) => kind === 'schedule')) return 'tolerance-changed';
  if (points.length < LEAST_FOR_CAPABILITY) return 'few-values';
  if (sigmaWithin === 0) return 'does-not-vary';
  const outside = movingRanges.some((range) => range > ranges.upper);
  return outside || points.some(({ rules }) => rules.length > 0) ? 'not-in-control' : null;
}

/** Changes that lie between two points, with the shift of the mean across each. Several between two count once. */
export function markChanges(points: readonly Charted[], changes: readonly Change[]): MarkedChange[] {
  const placed = changes
    .map(({ at: when, kind, text }) => ({
      at: when,
      kind,
      text,
      index: points.findIndex(({ at }) => at >= when),
    }))
    .filter(({ index }) => index > 0)
    .sort((a, b) => a.at - b.at);
  const edges = [...new Set(placed.map(({ index }) => index))].sort((a, b) => a - b);
  if (edges.length === 0) return [];
  const stages = stagedChart(
    points.map(({ value }) => value),
    edges,
  );
  return placed.map((change) => {
    const shift = stages.find(({ from }) => from === change.index)?.shift ?? null;
    return { ...change, shift };
  });
}
