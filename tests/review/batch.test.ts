import { describe, expect, it } from 'vitest';
import { RULES } from '../../hub/contract/batch-statistics.ts';
import { NELSON_RULES, WESTERN_ELECTRIC_RULES } from '../../hub/physics/statistics/run-rules.ts';
import { batchOf, type Charted } from '../../hub/review/batch.ts';
import { seededNoise } from '../reference/seeded-noise.ts';
import vectors from '../reference/spc-vectors.json' with { type: 'json' };

const DAY_MS = 86_400_000;
const WIDE = { lower: 700, upper: 900 };

function pointsOf(
  values: readonly number[],
  extra: (at: number) => Partial<Charted> = () => ({}),
): Charted[] {
  return values.map((value, n) => ({
    ...{ at: n * DAY_MS, value, firingId: `f${n}`, pieceId: null, title: '', marks: [] },
    ...{ furnaceId: 'oven', furnaceName: 'Oven', scheduleVersion: 1, verdict: 'met' as const },
    ...extra(n),
  }));
}

const ask = (points: Charted[], tolerance: { lower: number | null; upper: number | null } | null = WIDE) =>
  batchOf({ points, tolerance, changes: [] });

/** Values about 800 °C of a furnace that nothing troubles, found to break no rule. */
function steady(count: number): number[] {
  for (let seed = 1; seed < 200; seed += 1) {
    const noise = seededNoise(seed);
    const values = Array.from({ length: count }, () => 800 + 2 * noise());
    const { points, chart } = ask(pointsOf(values));
    const quiet = chart?.movingRanges.every((range) => range <= chart.ranges.upper);
    if (quiet && points.every(({ rules }) => rules.length === 0)) return values;
  }
  throw new Error('no steady row found');
}

describe('a row of firings on a chart', () => {
  // NIST/SEMATECH e-Handbook 6.3.2.2: mean 50.81, limits 55.8041 and 45.8159 with d2 rounded to 1.128.
  it('has the limits of the flow rates of NIST 6.3.2.2', () => {
    const { x, expected_published } = vectors.individuals;
    const { chart, points } = ask(pointsOf(x));
    expect(chart?.values.centre).toBeCloseTo(expected_published.x_bar, 12);
    expect(Math.abs((chart?.values.upper ?? 0) - expected_published.ucl)).toBeLessThan(0.002);
    expect(Math.abs((chart?.values.lower ?? 0) - expected_published.lcl)).toBeLessThan(0.002);
    expect(points.flatMap(({ rules }) => rules)).toEqual([]);
  });

  it('tests with the rules that the contract names, all of them', () => {
    expect(RULES).toEqual([...NELSON_RULES, ...WESTERN_ELECTRIC_RULES]);
  });

  it('names the tests at the point that completes their pattern', () => {
    const { points } = ask(pointsOf([...steady(25), 830]));
    expect(points.at(-1)?.rules).toEqual(expect.arrayContaining(['N1', 'W1']));
    const climbing = ask(pointsOf([800, 801, 800, 801, 802, 803, 804, 805]));
    expect(climbing.points.at(-1)?.rules).toContain('N3');
  });

  it('has no chart of one firing', () => {
    expect(ask(pointsOf([800]))).toMatchObject({
      chart: null,
      capability: { known: false, reason: 'few-values' },
    });
    expect(ask([])).toMatchObject({ points: [], chart: null });
  });
});

describe('capability', () => {
  it('is told of a steady process with values enough', () => {
    const { capability, chart } = ask(pointsOf(steady(30)), { lower: 790, upper: 810 });
    if (!(capability.known && chart)) throw new Error('it is known');
    // NIST/SEMATECH e-Handbook 6.1.6: Cp = (USL - LSL) / 6 sigma, Cpk the smaller side over 3 sigma.
    expect(capability.within.potential).toBeCloseTo(20 / (6 * chart.sigmaWithin), 9);
    const { centre } = chart.values;
    const nearest = Math.min(810 - centre, centre - 790);
    expect(capability.within.actual).toBeCloseTo(nearest / (3 * chart.sigmaWithin), 9);
    expect(capability.overall.actual).toBeCloseTo(nearest / (3 * chart.sigmaOverall), 9);
  });

  it.each([
    [
      'without a tolerance',
      () => batchOf({ points: pointsOf(steady(30)), tolerance: null, changes: [] }),
      'no-tolerance',
    ],
    ['of 24 firings', () => ask(pointsOf(steady(24))), 'few-values'],
    ['out of control', () => ask(pointsOf([...steady(30), 830])), 'not-in-control'],
    [
      'of values that are all one',
      () => ask(pointsOf(Array.from({ length: 30 }, () => 800))),
      'does-not-vary',
    ],
    [
      'of two furnaces together',
      () => ask(pointsOf(steady(30), (n) => (n === 4 ? { furnaceId: 'forge' } : {}))),
      'several-furnaces',
    ],
    [
      'over a change of the schedule',
      () =>
        batchOf({
          points: pointsOf(steady(30)),
          tolerance: WIDE,
          changes: [{ at: 10 * DAY_MS, kind: 'schedule', text: '2' }],
        }),
      'tolerance-changed',
    ],
  ])('is not told %s, and says why', (_, answer, reason) => {
    expect(answer().capability).toEqual({ known: false, reason });
  });
});

describe('what changed when', () => {
  const values = [800, 801, 799, 800, 806, 807, 805, 806];
  const change = { at: 3.5 * DAY_MS, kind: 'probe' as const, text: 'chamber' };

  it('stands at the first firing after it, with the shift that came with it', () => {
    const { changes } = batchOf({ points: pointsOf(values), tolerance: null, changes: [change] });
    expect(changes).toMatchObject([{ ...change, index: 4, shift: { value: 6, sure: true } }]);
  });

  it('is not marked before the first firing or after the last', () => {
    const around = [-1, 99].map((day) => ({ ...change, at: day * DAY_MS }));
    expect(batchOf({ points: pointsOf(values), tolerance: null, changes: around }).changes).toEqual([]);
  });

  it('begins the limits anew where it shifted the mean for sure, so that it marks nothing by itself', () => {
    const row = [800, 801, 799, 800.5, 800, 806, 807, 805, 806.5, 806];
    const at = 4.5 * DAY_MS;
    const split = batchOf({ points: pointsOf(row), tolerance: null, changes: [{ ...change, at }] });
    expect(split.chart?.stages.map(({ from, to }) => [from, to])).toEqual([
      [0, 5],
      [5, 10],
    ]);
    // By hand: the mean of the last five.
    expect(split.chart?.values.centre).toBeCloseTo(806.1, 9);
    expect(split.points.flatMap(({ rules }) => rules)).toEqual([]);
    const whole = batchOf({ points: pointsOf(row), tolerance: null, changes: [] });
    expect(whole.points.flatMap(({ rules }) => rules)).not.toEqual([]);
  });

  it('does not split a chart where the shift may be chance, or a side is too short', () => {
    const level = [800, 801, 799, 800.5, 800, 801, 799.5, 800, 800.5, 799];
    const chance = batchOf({
      points: pointsOf(level),
      tolerance: null,
      changes: [{ ...change, at: 4.5 * DAY_MS }],
    });
    expect(chance.chart?.stages).toHaveLength(1);
    const short = batchOf({ points: pointsOf(values), tolerance: null, changes: [change] });
    expect(short.chart?.stages).toHaveLength(1);
  });

  it('counts two changes between the same firings as one step', () => {
    const two = [change, { ...change, at: 3.6 * DAY_MS, kind: 'cylinder' as const }];
    const { changes } = batchOf({ points: pointsOf(values), tolerance: null, changes: two });
    expect(changes.map(({ kind, index }) => `${kind} ${index}`)).toEqual(['probe 4', 'cylinder 4']);
    expect(changes[0]?.shift).toEqual(changes[1]?.shift);
  });
});
