import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitDecay, type GasSample } from '../../../hub/physics/ventilation/decay.ts';
import { DECAY_CONDITIONS } from '../../../hub/physics/ventilation/decay-conditions.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';

const START = 1_700_000_000_000;
const MINUTE = 60_000;

/** SOURCE: worked series, computed: 1.9718 1/h, standard error 0.0113, 95 % interval 1.943 to 2.001. */
const SERIES = [180, 152, 131, 111, 95, 82, 70].map((ppm, i) => ({ atMs: START + i * 5 * MINUTE, ppm }));

interface Fall {
  readonly perHour: number;
  readonly firstExcess: number;
  readonly background: number;
  readonly minutes: number;
  readonly everyMinutes: number;
}

function fall(shape: Fall, excessAt = (excess: number) => excess): GasSample[] {
  const count = Math.floor(shape.minutes / shape.everyMinutes) + 1;
  return Array.from({ length: count }, (_, i) => {
    const hours = (i * shape.everyMinutes) / 60;
    const excess = excessAt(shape.firstExcess * Math.exp(-shape.perHour * hours));
    return { atMs: START + hours * 60 * MINUTE, ppm: shape.background + excess };
  });
}

const GOOD: Fall = { perHour: 2, firstExcess: 200, background: 5, minutes: 60, everyMinutes: 5 };
const told = { backgroundPpm: 5, backgroundAfterPpm: 5, sourceOff: true, openingsUnchanged: true };
const brokenIn = (fit: ReturnType<typeof fitDecay>) =>
  fit.conditions.filter((condition) => condition.held === false).map((condition) => condition.code);

describe('a fall of carbon monoxide', () => {
  test('gives the air changes, error and interval of the worked series', () => {
    const fit = fitDecay({ backgroundPpm: 5, samples: SERIES });
    expect(fit.airChangesPerHour).toBeCloseTo(1.9718, 4);
    expect(fit.standardError).toBeCloseTo(0.0113, 4);
    expect(fit.low).toBeCloseTo(1.943, 3);
    expect(fit.high).toBeCloseTo(2.001, 3);
    expect([fit.count, fit.seconds]).toEqual([7, 1800]);
  });

  test('holds the true rate in 95 of 100 intervals when the readings scatter', () => {
    let inside = 0;
    for (let seed = 0; seed < 400; seed += 1) {
      const noise = seededNoise(seed + 1);
      const fit = fitDecay({ ...told, samples: fall(GOOD, (excess) => excess * Math.exp(0.03 * noise())) });
      if (fit.low <= 2 && fit.high >= 2) inside += 1;
    }
    // 380 expected; five standard deviations of a binomial count are 22.
    expect(inside).toBeGreaterThan(358);
    expect(inside).toBeLessThan(400);
  });

  test('widens its interval with the confidence asked for', () => {
    const at = (confidence: number) => fitDecay({ backgroundPpm: 5, samples: SERIES, confidence });
    expect(at(0.99).low).toBeLessThan(at(0.95).low);
    expect(at(0.8).high).toBeLessThan(at(0.95).high);
  });
});

describe('the conditions', () => {
  test('all hold for a good fall that was told and measured at two points', () => {
    const fit = fitDecay({
      ...told,
      samples: fall(GOOD),
      otherPoints: [fall({ ...GOOD, firstExcess: 150, perHour: 2.1 })],
    });
    expect(fit.conditions.map((condition) => condition.code)).toEqual([...DECAY_CONDITIONS]);
    expect(fit.conditions.every((condition) => condition.held)).toBe(true);
    expect(fit.conditionsHeld).toBe(true);
  });

  test('are unknown, not kept, where nobody told or measured', () => {
    const fit = fitDecay({ backgroundPpm: 5, samples: fall(GOOD) });
    const unknown = fit.conditions.filter((condition) => condition.held === null).map(({ code }) => code);
    expect(unknown).toEqual(['source-off', 'openings-unchanged', 'background-steady', 'mixed']);
    expect(fit.conditionsHeld).toBeNull();
    expect(fit.conditions.every((condition) => condition.reason.length > 10)).toBe(true);
  });

  test('break one by one', () => {
    const samples = fall(GOOD);
    expect(brokenIn(fitDecay({ ...told, sourceOff: false, samples }))).toEqual(['source-off']);
    expect(brokenIn(fitDecay({ ...told, openingsUnchanged: false, samples }))).toEqual([
      'openings-unchanged',
    ]);
    expect(brokenIn(fitDecay({ ...told, backgroundAfterPpm: 12, samples }))).toEqual(['background-steady']);
    expect(brokenIn(fitDecay({ ...told, samples: fall({ ...GOOD, minutes: 15 }) }))).toEqual([
      'enough-samples',
      'enough-fall',
    ]);
    const corner = fall({ ...GOOD, perHour: 3 });
    expect(brokenIn(fitDecay({ ...told, samples, otherPoints: [samples, corner] }))).toEqual(['mixed']);
  });

  test('see a door that opened half way as a change of slope', () => {
    const before = fall({ ...GOOD, minutes: 30 });
    const after = fall({ ...GOOD, perHour: 6, firstExcess: 200 * Math.exp(-1), minutes: 25 });
    const moved = after.slice(1).map(({ atMs, ppm }) => ({ atMs: atMs + 30 * MINUTE, ppm }));
    expect(brokenIn(fitDecay({ ...told, samples: [...before, ...moved] }))).toEqual(['one-slope']);
  });

  test('do not take scatter for a change of slope', () => {
    const broken = Array.from({ length: 100 }, (_, seed) => {
      const noise = seededNoise(seed + 1);
      return brokenIn(
        fitDecay({ ...told, samples: fall(GOOD, (excess) => excess * Math.exp(0.12 * noise())) }),
      );
    });
    // 5 of 100 expected by the 95 % of the interval; 15 is more than four standard deviations away.
    expect(broken.filter((codes) => codes.includes('one-slope')).length).toBeLessThan(15);
  });

  test('see a source that is still on as a change of slope', () => {
    const samples = fall(GOOD, (excess) => 60 + excess * 0.7);
    expect(brokenIn(fitDecay({ ...told, samples }))).toContain('one-slope');
  });

  test('see a level that does not fall at all', () => {
    const rising = fall({ ...GOOD, perHour: -0.5 });
    const fit = fitDecay({ ...told, samples: rising });
    expect(fit.airChangesPerHour).toBeCloseTo(-0.5, 9);
    expect(brokenIn(fit)).toContain('enough-fall');
    expect(fit.conditionsHeld).toBe(false);
  });

  test('leave the tail in the background out, and notice when the level comes back', () => {
    const long = fall({ ...GOOD, minutes: 180 });
    const fit = fitDecay({ ...told, samples: long });
    expect(fit.airChangesPerHour).toBeCloseTo(2, 9);
    expect(fit.leftOut).toBeGreaterThan(5);
    expect(brokenIn(fit)).toEqual([]);
    const again = [...long, { atMs: START + 185 * MINUTE, ppm: 60 }];
    expect(brokenIn(fitDecay({ ...told, samples: again }))).toEqual(['above-background']);
  });
});

describe('for any fall', () => {
  const shapes = fc.record({
    perHour: fc.double({ min: 0.2, max: 15, noNaN: true }),
    firstExcess: fc.double({ min: 100, max: 2000, noNaN: true }),
    background: fc.double({ min: 0, max: 500, noNaN: true }),
    minutes: fc.constant(30),
    everyMinutes: fc.integer({ min: 1, max: 5 }),
  });

  test('the rate is found, and does not care how strong the gas was', () => {
    fc.assert(
      fc.property(shapes, fc.double({ min: 0.1, max: 50, noNaN: true }), (shape, factor) => {
        const ask = (used: Fall, resolutionPpm: number) =>
          fitDecay({ backgroundPpm: used.background, samples: fall(used), resolutionPpm }).airChangesPerHour;
        const plain = ask(shape, 0.001);
        expect(plain).toBeCloseTo(shape.perHour, 6);
        expect(ask({ ...shape, firstExcess: shape.firstExcess * factor }, 0.001)).toBeCloseTo(plain, 6);
      }),
    );
  });

  test('half the time between samples is twice the rate', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const samples = fall(shape);
        const fast = samples.map(({ atMs, ppm }) => ({ atMs: START + (atMs - START) / 2, ppm }));
        const ask = (list: GasSample[]) =>
          fitDecay({ backgroundPpm: shape.background, samples: list, resolutionPpm: 0.001 })
            .airChangesPerHour;
        expect(ask(fast)).toBeCloseTo(2 * ask(samples), 6);
      }),
    );
  });
});

describe('refusals', () => {
  test('too few samples above the background, and time that stands still', () => {
    const badInput = expect.objectContaining({ code: 'bad-input' });
    expect(() => fitDecay({ backgroundPpm: 5, samples: SERIES.slice(0, 2) })).toThrowError(badInput);
    expect(() => fitDecay({ backgroundPpm: 178, samples: SERIES })).toThrowError(badInput);
    const still = SERIES.map(({ ppm }) => ({ atMs: START, ppm }));
    expect(() => fitDecay({ backgroundPpm: 5, samples: still })).toThrowError(badInput);
  });

  test('a negative background, a certain confidence and a sensor without steps', () => {
    const outOfRange = expect.objectContaining({ code: 'out-of-range' });
    expect(() => fitDecay({ backgroundPpm: -1, samples: SERIES })).toThrowError(outOfRange);
    expect(() => fitDecay({ backgroundPpm: 5, samples: SERIES, confidence: 1 })).toThrowError(outOfRange);
    expect(() => fitDecay({ backgroundPpm: 5, samples: SERIES, resolutionPpm: 0 })).toThrowError(outOfRange);
  });
});
