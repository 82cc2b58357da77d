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

/** Charts the points, tests them, and says what they are capable of, or why that cannot be said. */
export function batchOf({ points, tolerance, changes }: BatchQuestion): BatchAnswer {
  const values = points.map(({ value }) => value);
  const marked = markChanges(points, changes);
  if (values.length < LEAST_FOR_CHART) {
    const bare = points.map((point) => ({ ...point, rules: [] }));
    const reason: NoCapability = tolerance === null ? 'no-tolerance' : 'few-values';
    return { points: bare, chart: null, capability: { known: false, reason }, changes: marked };
  }
  const chart = individualsChart(values);
  const ruled = withRules(points, chart);
  return {
    points: ruled,
    chart: shown(chart),
    capability: capabilityOf(ruled, chart, tolerance, marked),
    changes: marked,
  };
}

/** Each point with the tests whose pattern it completes. */
function withRules(points: readonly Charted[], { sigmas }: IndividualsChart): ChartPoint[] {
  const found = ruleFindings(sigmas, [...NELSON_RULES, ...WESTERN_ELECTRIC_RULES]);
  return points.map((point, at) => ({
    ...point,
    rules: found.filter(({ index }) => index === at).map(({ rule }) => rule),
  }));
}

function shown({ values, ranges, movingRanges, sigmaWithin, sigmaOverall }: IndividualsChart): BatchChart {
  return { values, ranges, movingRanges: [...movingRanges], sigmaWithin, sigmaOverall };
}

/**
 * Capability speaks of the future, so it is told only of a process that shows no special cause and of values enough:
 * one furnace, one tolerance, 25 values or more, no test fired, no moving range beyond its limit.
 */
function capabilityOf(
  points: readonly ChartPoint[],
  chart: IndividualsChart,
  tolerance: ToleranceLimits | null,
  changes: readonly MarkedChange[],
): BatchCapability {
  const reason = whyNot(points, chart, changes);
  if (tolerance === null) return { known: false, reason: 'no-tolerance' };
  if (reason !== null) return { known: false, reason };
  const { within, overall } = capability(chart, tolerance);
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
