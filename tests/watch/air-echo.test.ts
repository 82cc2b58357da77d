import { describe, expect, it } from 'vitest';
import type { AlarmKind, Finding } from '../../hub/contract/alarm.ts';
import { withoutEchoes } from '../../hub/watch/air-echo.ts';

const found = (...kinds: AlarmKind[]): Finding[] =>
  kinds.map((kind) => ({ kind, subject: 'shop', since: 0, params: {} }));
const told = (findings: Finding[], open: AlarmKind[] = []) =>
  withoutEchoes(
    findings,
    open.map((kind) => ({ kind, active: true })),
  ).map(({ kind }) => kind);

describe('what only says again that everyone has to leave', () => {
  it('is not raised while the second limit or the immediate danger stands', () => {
    expect(told(found('unsafe-air-second', 'unsafe-air-dose', 'unsafe-air-first'))).toEqual([
      'unsafe-air-second',
      'unsafe-air-first',
    ]);
    expect(told(found('unsafe-air-idlh', 'unsafe-air-ceiling', 'unsafe-air-blood'))).toEqual([
      'unsafe-air-idlh',
    ]);
  });

  it('is told on its own, and when the louder one has ended', () => {
    expect(told(found('unsafe-air-dose', 'unsafe-air-first'))).toEqual([
      'unsafe-air-dose',
      'unsafe-air-first',
    ]);
    expect(told(found('unsafe-air-day-mean'))).toEqual(['unsafe-air-day-mean']);
  });

  it('stays when it was told before the louder one came', () => {
    expect(told(found('unsafe-air-second', 'unsafe-air-short-mean'), ['unsafe-air-short-mean'])).toContain(
      'unsafe-air-short-mean',
    );
  });

  it('is never another gas, a sensor, or blindness', () => {
    const others = found(
      'unsafe-air-second',
      'unsafe-air-saturated',
      'unsafe-air-low-oxygen',
      'air-sensor-flat',
      'not-watching-air',
    );
    expect(told(others)).toHaveLength(others.length);
  });
});
