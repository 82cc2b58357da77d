import { describe, expect, it } from 'vitest';
import { heatPlan } from '../../hub/bench/window.ts';
import type { HeatStep } from '../../hub/contract/piece.ts';
import type { RouteHeat } from '../../hub/contract/route-template.ts';
import { Schedule, type ScheduleDraftInput } from '../../hub/contract/schedule.ts';
import { published, type StepWindow, window } from '../../hub/physics/steel/grade.ts';
import { grade, heatStep } from './kit.ts';

const step = (name: RouteHeat) => heatStep(name) as HeatStep;
const steel = (...windows: StepWindow[]) => ({ ...grade('1095'), windows });
const SOURCE = published('a data sheet of this test');

function schedule(segments: ScheduleDraftInput['segments']): Schedule {
  return Schedule.parse({ id: 's', version: 1, name: 'x', segments, createdAt: 1, archived: false });
}

describe('where a heat may be aimed', () => {
  it('is the window of the steel for its step; hardening is austenitising', () => {
    const plan = heatPlan(step('harden'), steel(window('austenitise', 790, 830, SOURCE)), null);
    expect(plan?.window).toEqual({
      lowCelsius: 790,
      highCelsius: 830,
      by: 'steel',
      scheduleId: null,
      from: SOURCE,
    });
  });

  it('is as wide at least as its source is good for: one temperature in a table is no razor edge', () => {
    const plan = heatPlan(step('normalise'), steel(window('normalise', 855, 855, SOURCE)), null);
    expect(plan?.window).toMatchObject({ lowCelsius: 845, highCelsius: 865 });
  });

  it('is not known for a temper that nobody has chosen a schedule for, whatever the steel', () => {
    expect(heatPlan(step('temper'), steel(window('temper', 150, 650, SOURCE)), null)).toBeNull();
    expect(heatPlan(step('spheroidise'), steel(), null)).toBeNull();
    expect(heatPlan(step('normalise'), null, null)).toBeNull();
  });

  it('follows the chosen schedule by its hottest hold, and knows when it cools in the furnace', () => {
    const chosen = schedule([
      { kind: 'ramp', targetCelsius: 900 },
      { kind: 'cool', targetCelsius: 300, medium: 'still-air' },
      { kind: 'ramp', targetCelsius: 650 },
      { kind: 'soak', targetCelsius: 650, toleranceCelsius: 8, durationSeconds: 60 },
      { kind: 'cool', targetCelsius: 400, medium: 'furnace' },
    ]);
    const plan = heatPlan(step('temper'), steel(window('temper', 150, 650, SOURCE)), chosen);
    expect(plan).toEqual({
      window: { lowCelsius: 642, highCelsius: 658, by: 'schedule', scheduleId: 's', from: null },
      coolsInFurnaceTo: 400,
    });
  });

  it('takes a schedule without a hold by its hottest ramp, and one that only cools not at all', () => {
    const ramp = schedule([{ kind: 'ramp', targetCelsius: 700 }]);
    expect(heatPlan(step('temper'), null, ramp)?.window).toMatchObject({ lowCelsius: 690, highCelsius: 710 });
    const cools = schedule([{ kind: 'cool', targetCelsius: 100, medium: 'still-air' }]);
    expect(heatPlan(step('temper'), null, cools)).toBeNull();
  });
});
