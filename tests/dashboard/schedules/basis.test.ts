import { describe, expect, it } from 'vitest';
import { reasonsBySegment } from '../../../dashboard/schedules/basis.ts';
import type { Segment } from '../../../hub/contract/schedule.ts';
import type { PlanReason, ScheduleBasis } from '../../../hub/contract/schedule-basis.ts';

const HABIT = { standing: 'common-practice', source: '' } as const;

function reason(
  path: string,
  value: PlanReason['value'],
  code: PlanReason['code'] = 'target-window',
): PlanReason {
  return { path, code, value, params: {}, text: 'because', from: HABIT };
}

const SOAK: Segment = { kind: 'soak', targetCelsius: 815, toleranceCelsius: 8, durationSeconds: 600 };

function basisOf(...reasons: PlanReason[]): ScheduleBasis {
  return {
    madeAt: 0,
    step: 'harden',
    steel: { id: '1084', title: '1084', composition: { C: 0.84 } },
    section: { shape: 'bar', thicknessMm: 10 },
    furnace: 'Oven',
    reasons,
    uncertainty: [],
    askTheDataSheet: [],
  };
}

describe('the reasons of a schedule', () => {
  it('stand by their segment', () => {
    const basis = basisOf(
      reason('/segments/1/durationSeconds', 600),
      reason('/segments/0/targetCelsius', 815),
      reason('/segments/1/targetCelsius', 815),
    );
    const found = reasonsBySegment(basis, [{ ...SOAK, kind: 'soak' }, SOAK]);
    expect(found.map(({ index, reasons }) => [index, reasons.length])).toEqual([
      [0, 1],
      [1, 2],
    ]);
  });

  it('say when a person has changed the number they were the reason of', () => {
    const basis = basisOf(
      reason('/segments/0/targetCelsius', 800),
      reason('/segments/0/durationSeconds', 600),
    );
    const [segment] = reasonsBySegment(basis, [SOAK]);
    expect(segment?.reasons.map(({ changed }) => changed)).toEqual([true, false]);
  });

  it('do not call the rounding of a unit a change', () => {
    // 815 °C is 1499 °F; typed back it is 815.0 to within a hundredth.
    const basis = basisOf(reason('/segments/0/targetCelsius', 814.99));
    expect(reasonsBySegment(basis, [SOAK])[0]?.reasons[0]?.changed).toBe(false);
  });

  it('say so too when the segment itself is gone', () => {
    const basis = basisOf(reason('/segments/4/targetCelsius', 815));
    expect(reasonsBySegment(basis, [SOAK])[0]?.reasons[0]?.changed).toBe(true);
  });
});
