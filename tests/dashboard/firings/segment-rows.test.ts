import { describe, expect, it } from 'vitest';
import { segmentRows } from '../../../dashboard/firings/segment-rows.ts';
import type { SegmentResult } from '../../../hub/contract/firing.ts';
import { HARDENING, TEMPER } from '../mock-shop.ts';

function result(index: number, change: Partial<SegmentResult> = {}): SegmentResult {
  return {
    index,
    state: 'done',
    startedAt: 0,
    endedAt: 7_500_000,
    startCelsius: 200,
    endCelsius: 205,
    soakSeconds: 7200,
    soakSecondsCore: null,
    soakSecondsAir: 7200,
    elapsedSeconds: 7500,
    blindSeconds: 0,
    peakCelsius: 225,
    lowestCelsius: 199,
    meanCelsius: 205,
    overshootCelsius: 12,
    secondsAboveTolerance: 175,
    meanRateCelsiusPerHour: 4,
    steepestRateCelsiusPerHour: 90,
    verdict: 'not-met',
    reasons: [{ code: 'overshoot', params: {}, text: '12 °C above the tolerance for 2 min' }],
    ...change,
  };
}

function rowsOf(segments: SegmentResult[], unit: 'Cel' | '[degF]' = 'Cel') {
  const judgement = { ...HARDENING.judgement, events: [], segments };
  return segmentRows({ schedule: TEMPER, judgement }, unit);
}

describe('the table of segments', () => {
  it('puts what was planned beside what was achieved', () => {
    const [, soak] = rowsOf([result(1)]);
    expect(soak).toMatchObject({
      name: '2. Soak at 205 °C',
      terms: '±8, 2 h',
      achieved: '200 °C to 205 °C',
      soak: '2 h of 2 h',
      span: '199 °C to 225 °C',
      over: '+12 °C for 2 min 55 s',
      reasons: ['12 °C above the tolerance for 2 min'],
    });
  });

  it('shows °F by converting points as points and differences as differences', () => {
    // NIST SP 811 B.9: t/°F = 1.8 t/°C + 32; a difference of 1 °C is 1.8 °F. 225 °C = 437 °F, 12 °C = 21.6 °F.
    const [ramp, soak] = rowsOf([result(0, { overshootCelsius: 0 }), result(1)], '[degF]');
    expect(soak?.span).toBe('390 °F to 437 °F');
    expect(soak?.over).toBe('+22 °F for 2 min 55 s');
    expect(ramp?.rates).toBe('7 °F/h / 162 °F/h');
  });

  it('says no rate of a soak and no soak time of a ramp', () => {
    const [ramp, soak] = rowsOf([result(0), result(1)]);
    expect(soak?.rates).toBe('–');
    expect(ramp?.soak).toBe('–');
    expect(ramp?.over).toContain('+12');
  });

  it('claims nothing of a segment that has not begun', () => {
    const waiting = result(2, { state: 'waiting', startedAt: null, startCelsius: null, endCelsius: null });
    const [first, , cool] = rowsOf([waiting]);
    expect(cool).toMatchObject({ state: 'waiting', achieved: '–', took: '', blind: '–' });
    expect(first).toMatchObject({ state: 'waiting', verdict: 'pending', span: '–' });
  });

  it('names only what is known of a segment that runs', () => {
    const [ramp] = rowsOf([result(0, { state: 'running', endedAt: null, endCelsius: null })]);
    expect(ramp?.achieved).toBe('from 200 °C');
  });
});
