/** What age and faults do to a sensor, and that the truth knows nothing of it. */
import { describe, expect, test } from 'vitest';
import type { BehaviourInput } from '../../../sensors-sim/behaviours/behaviour.ts';
import { simulate } from '../../../sensors-sim/run.ts';
import { fire, prepare, START } from '../fire.ts';

const SOURCE: BehaviourInput = { name: 'other-co-source', gramsPerHour: 150 };
const withFault = (fault: BehaviourInput) => fire({ plan: null, minutes: 40, behaviours: [SOURCE, fault] });
const sound = () => fire({ plan: null, minutes: 40, behaviours: [SOURCE] });
const values = (fired: ReturnType<typeof fire>, channel = 'co') =>
  fired.readings('air-node', channel).map(({ value }) => value);

describe('a carbon monoxide sensor', () => {
  test('that is dead shows one value without a tremble while the room fills', () => {
    const fired = withFault({ name: 'flat-sensor', startSeconds: 300, value: 2 });
    const after = fired.readings('air-node', 'co').filter(({ seconds }) => seconds >= 300);
    expect(new Set(after.map(({ value }) => value))).toEqual(new Set([2]));
    expect(fired.truth.at(-1)?.coPpm).toBeGreaterThan(100);
    expect(values(fired, 'co-corner').at(-1)).toBeGreaterThan(100);
  });

  test('that is old answers with its share, and with none of the other one', () => {
    const [aged, fresh] = [withFault({ name: 'aged-sensor', lostShare: 0.5 }), sound()];
    expect((values(aged).at(-1) ?? 0) / (values(fresh).at(-1) ?? 1)).toBeCloseTo(0.5, 6);
    expect(values(aged, 'co-corner')).toEqual(values(fresh, 'co-corner'));
    expect(aged.truth).toEqual(fresh.truth);
  });

  test('whose zero walks is off by the hours since then', () => {
    const [walking, fresh] = [
      withFault({ name: 'drifting-sensor', startSeconds: 600, perHour: 30 }),
      sound(),
    ];
    const gap = (index: number) => (values(walking)[index] ?? 0) - (values(fresh)[index] ?? 0);
    expect(gap(60)).toBeCloseTo(0, 6);
    expect(gap(479)).toBeCloseTo((30 * 1800) / 3600, 3);
  });

  test('at the end of its range shows that end and no more', () => {
    const fired = withFault({ name: 'saturated-sensor', ceiling: 60 });
    expect(Math.max(...values(fired))).toBe(60);
    expect(
      values(fired)
        .slice(-60)
        .every((value) => value === 60),
    ).toBe(true);
  });
});

describe('a fault of a sensor that the shop does not have', () => {
  test('is refused, and says what to fit', () => {
    const behaviours: BehaviourInput[] = [{ name: 'flat-sensor', channel: 'co-corner' }];
    const refused = expect.objectContaining({
      code: 'bad-behaviour',
      message: expect.stringContaining('second-co'),
    });
    expect(() => prepare({ plan: null, minutes: 1, behaviours, fittings: [] })).toThrowError(refused);
    expect(() => prepare({ plan: null, minutes: 1, behaviours })).not.toThrow();
  });
});

test('a shop that is fitted with nothing publishes the usual channels and no other', () => {
  const payloads = [...simulate({ seed: 1, startMs: START, seconds: 1, furnacePlan: [] })]
    .filter(({ topic }) => topic.endsWith('/readings'))
    .flatMap(({ payload }) => [...payload.matchAll(/"n":"([^"]+)"/g)].map((match) => match[1]));
  expect(payloads).toEqual(['chamber', 'load', 'supply-pressure', 'cylinder-mass', 'chamber', 'load', 'co']);
});
