import { describe, expect, it } from 'vitest';
import {
  aboveLimit,
  belowLimit,
  type ConditionState,
  QUIET,
  stepCondition,
} from '../../hub/judging/condition.ts';

const DELAYS = { onDelayMs: 5000, offDelayMs: 10_000 };
type Told = readonly [at: number, active: boolean | null];

const run = (told: readonly Told[], delays = DELAYS): ConditionState =>
  told.reduce((state: ConditionState, [at, active]) => stepCondition(state, { active, at }, delays), QUIET);

describe('a condition with delays', () => {
  it('is raised only when the signal has lasted for the on-delay, and dates from its onset', () => {
    expect(
      run([
        [1000, true],
        [5999, true],
      ]).raised,
    ).toBe(false);
    expect(
      run([
        [1000, true],
        [6000, true],
      ]),
    ).toMatchObject({ raised: true, since: 1000 });
  });

  it('forgets a spike that is shorter than the on-delay', () => {
    const state = run([
      [0, true],
      [4000, false],
      [5000, true],
      [9999, true],
    ]);
    expect(state.raised).toBe(false);
    expect(state.signalSince).toBe(5000);
  });

  it('holds on until the signal has been gone for the off-delay', () => {
    const raised: Told[] = [
      [0, true],
      [5000, true],
    ];
    expect(run([...raised, [6000, false], [15_999, false]]).raised).toBe(true);
    expect(run([...raised, [6000, false], [10_000, true], [12_000, false], [21_999, false]]).raised).toBe(
      true,
    );
    expect(run([...raised, [6000, false], [16_000, false]])).toMatchObject({ raised: false, since: null });
  });

  it('neither raises nor clears while nobody can tell', () => {
    expect(
      run([
        [0, true],
        [1000, null],
        [60_000, null],
      ]).raised,
    ).toBe(false);
    const raised: Told[] = [
      [0, true],
      [5000, true],
      [6000, null],
      [600_000, null],
    ];
    expect(run(raised)).toMatchObject({ raised: true, since: 0 });
    // What is back after the blindness begins its delay anew.
    expect(run([...raised, [600_001, false], [610_000, false]]).raised).toBe(true);
    expect(run([...raised, [600_001, false], [610_001, false]]).raised).toBe(false);
  });

  it('does not count blind time towards the on-delay', () => {
    const state = run([
      [0, true],
      [4000, null],
      [9000, true],
      [13_999, true],
    ]);
    expect(state.raised).toBe(false);
  });

  it('raises at once without a delay, and gives back the same object when nothing is new', () => {
    const state = run([[7, true]], { onDelayMs: 0, offDelayMs: 0 });
    expect(state).toMatchObject({ raised: true, since: 7 });
    expect(stepCondition(state, { active: true, at: 99 }, DELAYS)).toBe(state);
  });
});

describe('a deadband', () => {
  it('keeps noise at the limit from chattering', () => {
    let was = false;
    let changes = 0;
    for (const value of [9.9, 10.1, 9.9, 10.1, 9.6, 10.2, 9.9]) {
      const is = aboveLimit(was, value, 10, 1);
      changes += is === was ? 0 : 1;
      was = is;
    }
    expect(changes).toBe(1);
    expect(aboveLimit(true, 9, 10, 1)).toBe(false);
  });

  it('works downwards as well, and the limit itself is not beyond the limit', () => {
    expect(aboveLimit(false, 10, 10, 1)).toBe(false);
    expect(belowLimit(false, 10, 10, 1)).toBe(false);
    expect(belowLimit(true, 10.9, 10, 1)).toBe(true);
    expect(belowLimit(true, 11, 10, 1)).toBe(false);
  });
});
