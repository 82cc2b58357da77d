import { describe, expect, it } from 'vitest';
import { drawnMs, isSketch, planCurve } from '../../../dashboard/charts/plan-curve.ts';
import { ScheduleDraft, type Segment } from '../../../hub/contract/schedule.ts';

const MINUTE = 60_000;
function segments(...list: unknown[]): Segment[] {
  return ScheduleDraft.parse({ name: 'x', segments: list }).segments;
}

describe('the curve of a schedule', () => {
  it('takes its time from the rates and durations that the schedule names', () => {
    // 780 °C at 390 °C/h is two hours; then 20 minutes; then 400 °C at 200 °C/h is two hours.
    const plan = planCurve(
      segments(
        { kind: 'ramp', targetCelsius: 800, rateCelsiusPerHour: 390 },
        { kind: 'soak', targetCelsius: 800, durationSeconds: 1200 },
        { kind: 'cool', targetCelsius: 400, medium: 'furnace', maximumRateCelsiusPerHour: 200 },
      ),
      { at: 0, celsius: 20 },
    );
    expect(plan.map(({ at }) => at / MINUTE)).toEqual([0, 120, 120, 140, 140, 260]);
    expect(plan.map(({ celsius }) => celsius)).toEqual([20, 800, 800, 800, 800, 400]);
  });

  it('has a band where there is a tolerance, and none over a cooling', () => {
    const plan = planCurve(
      segments(
        { kind: 'soak', targetCelsius: 20, durationSeconds: 60, toleranceCelsius: 8 },
        { kind: 'cool', targetCelsius: 10, medium: 'still-air' },
      ),
      { at: 0, celsius: 20 },
    );
    expect(plan.map(({ low, high }) => high - low)).toEqual([16, 16, 0, 0]);
  });

  it('says when it is a sketch', () => {
    const [free, soak] = segments(
      { kind: 'ramp', targetCelsius: 800 },
      { kind: 'soak', targetCelsius: 800, durationSeconds: 60 },
    );
    if (!free || !soak) throw new Error('two segments');
    expect(isSketch([free, soak])).toBe(true);
    expect(isSketch([soak])).toBe(false);
    expect(drawnMs(free, 20)).toBeGreaterThan(0);
  });

  it('is no curve without segments', () => {
    expect(planCurve([], { at: 0, celsius: 20 })).toEqual([]);
  });
});
