import { describe, expect, it } from 'vitest';
import { FORGE_ANNEAL, FORGE_NORMALISE, OVEN_HARDEN, OVEN_TEMPER } from '../../../sensors-sim/plans.ts';
import {
  addCoverage,
  type Coverage,
  HORIZONS,
  heldShare,
  summed,
} from '../../bench/forecast-report/coverage.ts';
import { type Firing, fire, PUBLISHING } from '../../bench/forecast-report/firings.ts';
import { knowableSeconds, leadSeconds, watch } from '../../bench/forecast-report/warnings.ts';

/**
 * A small version of the calibration report, on seeds that the model was not fitted on. The bounds are wide on
 * purpose: a few firings are one draw, and neighbouring forecasts share their luck. The report has the figures.
 */
const EVERY_FIVE = { everySeconds: 5, lostShare: 0, hole: true };

function firing(
  plan: Firing['wish']['plan'],
  operator: 'good' | 'late',
  seed: number,
  minutes: number,
): Firing {
  return fire({ plan, operator, seed, minutes });
}

describe('the 80 % band over simulated firings', () => {
  const table: Coverage = new Map();
  addCoverage(table, firing(FORGE_ANNEAL, 'good', 201, 50), EVERY_FIVE, 20);
  addCoverage(table, firing(FORGE_NORMALISE, 'late', 202, 40), EVERY_FIVE, 20);
  addCoverage(table, firing(OVEN_TEMPER, 'good', 203, 45), EVERY_FIVE, 20);

  it.each(HORIZONS)('holds about four truths in five %i s on', (horizon) => {
    const tally = summed(table, / heated$/)[HORIZONS.indexOf(horizon)];
    if (tally === undefined) throw new Error('no such horizon');
    expect(tally.tries).toBeGreaterThan(500);
    expect(heldShare(tally)).toBeGreaterThan(0.65);
    expect(heldShare(tally)).toBeLessThan(0.95);
  });

  it('is not bought with width: a few degrees at a minute', () => {
    const tally = summed(table, / heated$/)[1];
    expect((tally?.width ?? 0) / (tally?.tries ?? 1)).toBeLessThan(8);
    expect((tally?.miss ?? 0) / (tally?.tries ?? 1)).toBeLessThan(3);
  });

  it('cannot foresee that somebody takes the piece out', () => {
    // Nothing in the readings tells of it: whoever knows the plan must not ask across the end of a segment.
    const tally = summed(table, /^forge chamber into-cooling$/)[0];
    expect(heldShare(tally ?? { tries: 1, held: 1, width: 0, miss: 0 })).toBeLessThan(0.2);
  });
});

describe('overshoot warnings over simulated firings', () => {
  const publishing = PUBLISHING[1] ?? EVERY_FIVE;

  it.each([FORGE_ANNEAL, FORGE_NORMALISE])('come a minute ahead in a late $name', (plan) => {
    const outcome = watch(firing(plan, 'late', 204, 30), publishing);
    expect(outcome.overAtMs).not.toBeNull();
    expect(leadSeconds(outcome) ?? 0).toBeGreaterThanOrEqual(60);
  });

  it.each([
    { name: 'forge anneal', plan: FORGE_ANNEAL, minutes: 50 },
    { name: 'forge normalise', plan: FORGE_NORMALISE, minutes: 45 },
    { name: 'oven temper', plan: OVEN_TEMPER, minutes: 45 },
  ])('stay away in a good $name', ({ plan, minutes }) => {
    const outcome = watch(firing(plan, 'good', 205, minutes), publishing);
    expect(outcome.overAtMs).toBeNull();
    expect(outcome.warnedAtMs).toBeNull();
  });

  it('come while an oven that runs away is still well below the limit', () => {
    const late = watch(firing(OVEN_HARDEN, 'late', 206, 95), publishing);
    const good = firing(OVEN_HARDEN, 'good', 206, 95);
    const knowable = knowableSeconds(late, good) ?? Number.NaN;
    const lead = leadSeconds(late) ?? Number.NaN;
    expect(knowable).toBeGreaterThan(90);
    expect(lead).toBeGreaterThan(30);
    expect(lead).toBeLessThan(knowable);
  });
});
