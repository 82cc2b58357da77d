import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type ContentsConfig,
  contentsByFlow,
  type FlowNews,
  noteFill,
  stepContents,
} from '../../../hub/physics/gas-supply/contents-by-flow.ts';
import {
  type EnduranceQuestion,
  endurance,
  lastsFor,
  massFlow,
} from '../../../hub/physics/gas-supply/endurance.ts';
import { continuousDraw } from '../../../hub/physics/gas-supply/vaporisation.ts';

const exactly = (value: number) => ({ low: value, value, high: value });
const WARM = { airCelsius: 20 } as const;
const FULL_20_LB = 9.07;

describe('hours in a full 20 lb cylinder', () => {
  // SOURCE: worked examples, computed: 9.07 kg at 15 and 20 kW net; 20 lb at 100 000 Btu/h gross.
  test.each([
    ['net', 15, 7.78],
    ['net', 20, 5.84],
    ['gross', 29.3071, 4.33],
  ] as const)('at %s %d kW are %d', (kind, kilowatts, hours) => {
    const found = endurance({ contents: exactly(FULL_20_LB), draw: { kind, kilowatts }, ...WARM });
    expect(Math.abs(found.value - hours)).toBeLessThan(0.006);
  });

  test('at 100 000 Btu/h differ from the trade’s 4.31 only by its heating value', () => {
    // SOURCE: 20 lb x 21 548 Btu/lb / 100 000 = 4.31 h (LP-gas handbooks); pure propane holds 21 637 Btu/lb.
    const found = endurance({
      contents: exactly(9.0718),
      draw: { kind: 'gross', kilowatts: 29.3071 },
      ...WARM,
    });
    expect((found.value * 21_548) / 21_637).toBeCloseTo(4.31, 2);
  });

  test('are mass over flow when the flow is known', () => {
    const found = endurance({
      contents: exactly(6),
      draw: { kind: 'mass', kilogramsPerHour: 1.5 },
      drawErrorShare: 0,
      ...WARM,
    });
    expect([found.low, found.value, found.high]).toEqual([4, 4, 4]);
    expect(found.limitedBy).toBe('mass');
  });
});

describe('the range', () => {
  const plain: EnduranceQuestion = {
    contents: { low: 4, value: 5, high: 6 },
    draw: { kind: 'mass', kilogramsPerHour: 1 },
    ...WARM,
  };

  test('spans what is left and how much is drawn', () => {
    const found = endurance(plain);
    expect(found.low).toBeCloseTo(4 / 1.15, 9);
    expect(found.value).toBeCloseTo(5, 9);
    expect(found.high).toBeCloseTo(6 / 0.85, 9);
    expect(found.vaporisationHours).toBeNull();
  });

  test('leaves the last fifth of the cylinder out in the cold, and where nobody knows how cold it is', () => {
    const cold = endurance({ ...plain, airCelsius: 2, fullKilograms: 45.36 });
    expect(cold.low).toBe(0);
    const { airCelsius: _, ...unknown } = plain;
    expect(endurance({ ...unknown, fullKilograms: 9 }).low).toBeCloseTo((4 - 1.8) / 1.15, 9);
    expect(endurance({ ...plain, airCelsius: 2 }).high).toBe(endurance(plain).high);
  });

  test('ends where boiling no longer keeps up', () => {
    const small: EnduranceQuestion = {
      ...plain,
      contents: exactly(9),
      fullKilograms: 9.07,
      draw: { kind: 'mass', kilogramsPerHour: 1 },
      drawErrorShare: 0,
    };
    const found = endurance(small);
    const left = 9 - (found.vaporisationHours ?? 0);
    const giving = continuousDraw({ fullKilograms: 9.07, kilograms: left, airCelsius: 20 }).kilogramsPerHour;
    expect(giving).toBeCloseTo(1, 6);
    expect(found).toMatchObject({ limitedBy: 'vaporisation', value: 9 });
    expect(found.low).toBe(found.vaporisationHours);
  });

  test('starts at nothing when the draw is more than the cylinder gives for long', () => {
    const hard = endurance({ ...plain, fullKilograms: 9.07, draw: { kind: 'mass', kilogramsPerHour: 4 } });
    expect(hard).toMatchObject({ low: 0, limitedBy: 'vaporisation', vaporisationHours: 0 });
    const polar = endurance({ ...plain, fullKilograms: 9.07, airCelsius: -30 });
    expect(polar).toMatchObject({ low: 0, vaporisationHours: 0, continuousKilogramsPerHour: null });
  });

  test('grows with more cylinders that feed together', () => {
    const two = endurance({ ...plain, fullKilograms: 9.07, cylinders: 2 });
    expect(two.value).toBeCloseTo(10, 9);
    expect(two.vaporisationHours).toBeGreaterThan(
      endurance({ ...plain, fullKilograms: 9.07 }).vaporisationHours ?? 0,
    );
  });

  test('is ordered, and shrinks with less gas or more draw', () => {
    const questions = fc.record({
      masses: fc.tuple(...[0, 0, 0].map(() => fc.double({ min: 0.1, max: 45, noNaN: true }))),
      draw: fc.double({ min: 0.05, max: 8, noNaN: true }),
      airCelsius: fc.double({ min: -25, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(questions, ({ masses, draw, airCelsius }) => {
        const [low = 0, value = 0, high = 0] = [...masses].sort((a, b) => a - b);
        const ask = (factor: number) =>
          endurance({
            contents: { low, value, high },
            draw: { kind: 'mass', kilogramsPerHour: draw * factor },
            fullKilograms: 45.36,
            airCelsius,
          });
        const [one, more] = [ask(1), ask(1.3)];
        expect(one.low).toBeLessThanOrEqual(one.value + 1e-9);
        expect(one.value).toBeLessThanOrEqual(one.high + 1e-9);
        expect(more.low).toBeLessThanOrEqual(one.low + 1e-9);
        expect(more.high).toBeLessThan(one.high);
      }),
    );
  });
});

describe('whether it lasts', () => {
  const report = endurance({
    contents: { low: 4, value: 5, high: 6 },
    draw: { kind: 'mass', kilogramsPerHour: 1 },
    ...WARM,
  });
  test('is judged by the range, not by its middle', () => {
    expect(lastsFor(report, 3)).toBe('expected-to-last');
    expect(lastsFor(report, 4.9)).toBe('may-not-last');
    expect(lastsFor(report, 8)).toBe('will-not-last');
  });

  test('a draw of nothing and contents out of order are refused', () => {
    expect(() => massFlow({ kind: 'net', kilowatts: 0 })).toThrowError(
      expect.objectContaining({ code: 'no-solution' }),
    );
    const draw = { kind: 'mass', kilogramsPerHour: 1 } as const;
    expect(() => endurance({ contents: { low: 5, value: 4, high: 6 }, draw })).toThrowError(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });
});

describe('what is left by the flow since the fill', () => {
  const CONFIG: ContentsConfig = { flowErrorShare: 0.15, mostKilogramsPerHour: 3, longestHoldMs: 60_000 };
  const HOUR = 3_600_000;
  const full = { low: 8.8, value: 9, high: 9.1 };
  const run = (news: readonly FlowNews[]) =>
    news.reduce((state, next) => stepContents(CONFIG, state, next), noteFill(0, full));
  const hours = (count: number, kilogramsPerHour: number): FlowNews[] =>
    Array.from({ length: count * 60 + 1 }, (_, i) => ({ atMs: i * 60_000, kilogramsPerHour }));

  test('loses what flowed, with a band that grows by 15 % of it', () => {
    const left = contentsByFlow(run(hours(3, 1.2)));
    expect(left.value).toBeCloseTo(9 - 3.6, 9);
    expect(left.low).toBeCloseTo(8.8 - 3.6 * 1.15, 9);
    expect(left.high).toBeCloseTo(9.1 - 3.6 * 0.85, 9);
  });

  test('keeps the last flow while nobody knows, and spans from none to the most', () => {
    const state = run([...hours(1, 1.2), { atMs: 2 * HOUR, kilogramsPerHour: null }]);
    const left = contentsByFlow(state);
    expect(state.unknownSeconds).toBe(3540);
    expect(left.value).toBeCloseTo(9 - 2.4, 9);
    expect(left.high).toBeCloseTo(9.1 - 1.22 * 0.85, 9);
    expect(left.low).toBeCloseTo(8.8 - 1.22 * 1.15 - (3 * 3540) / 3600, 9);
  });

  test('is not moved by ticks, and never falls below nothing', () => {
    const ticked = hours(1, 2).flatMap((news): FlowNews[] => [
      { atMs: news.atMs, kilogramsPerHour: null },
      news,
    ]);
    expect(contentsByFlow(run(ticked)).value).toBeCloseTo(contentsByFlow(run(hours(1, 2))).value, 9);
    expect(contentsByFlow(run(hours(8, 2)))).toEqual({ low: 0, value: 0, high: 0 });
  });

  test('has a band that only grows until the next fill', () => {
    const flows = fc.array(
      fc.record({
        minutes: fc.integer({ min: 1, max: 30 }),
        flow: fc.option(fc.double({ min: 0, max: 3, noNaN: true })),
      }),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(flows, (list) => {
        let state = noteFill(0, { low: 90, value: 91, high: 92 });
        for (const { minutes, flow } of list) {
          const before = contentsByFlow(state);
          state = stepContents(CONFIG, state, {
            atMs: state.atMs + minutes * 60_000,
            kilogramsPerHour: flow,
          });
          const after = contentsByFlow(state);
          expect(after.high - after.low).toBeGreaterThanOrEqual(before.high - before.low - 1e-9);
          expect(after.low <= after.value && after.value <= after.high).toBe(true);
          expect(after.value).toBeLessThanOrEqual(before.value + 1e-9);
        }
      }),
    );
  });

  test('refuses a fill out of order and time that runs back', () => {
    const badInput = expect.objectContaining({ code: 'bad-input' });
    expect(() => noteFill(0, { low: 2, value: 1, high: 3 })).toThrowError(badInput);
    expect(() => stepContents(CONFIG, noteFill(5, full), { atMs: 4, kilogramsPerHour: 1 })).toThrowError(
      badInput,
    );
  });
});
