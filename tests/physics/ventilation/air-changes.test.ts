import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  airNeededCubicMetresPerHour,
  removalSeconds,
  roomPpmAfter,
  steadyRoomPpm,
} from '../../../hub/physics/room-air.ts';
import {
  halfLifeFlowCubicMetresPerHour,
  highestSourceCubicMetresPerHour,
  secondsUntilBelow,
  twoPointAirChanges,
} from '../../../hub/physics/ventilation/air-changes.ts';
import { decayReport } from '../../../hub/physics/ventilation/decay-report.ts';

const exact = { firstErrorPpm: 0, lastErrorPpm: 0 };

describe('two readings of a fall', () => {
  test('120 to 35 ppm over 8 in half an hour are 2.845 changes an hour', () => {
    // SOURCE: worked example, computed.
    const fall = { firstPpm: 120, lastPpm: 35, backgroundPpm: 8, seconds: 1800 };
    expect(twoPointAirChanges({ ...fall, ...exact }).perHour).toBeCloseTo(2.845, 3);
    // u(A) = (1/t) sqrt((2/112)^2 + (1/27)^2), environmental-engineering texts.
    const { error } = twoPointAirChanges({ ...fall, firstErrorPpm: 2, lastErrorPpm: 1 });
    expect(error).toBeCloseTo(2 * Math.hypot(2 / 112, 1 / 27), 12);
  });

  test('1500 to 700 ppm of CO2 over 420 in 40 min are 2.025', () => {
    // SOURCE: worked example, computed.
    const fall = { firstPpm: 1500, lastPpm: 700, backgroundPpm: 420, seconds: 2400 };
    expect(twoPointAirChanges({ ...fall, ...exact }).perHour).toBeCloseTo(2.025, 3);
  });

  test('that rise or touch the background have no answer', () => {
    const noSolution = expect.objectContaining({ code: 'no-solution' });
    const fall = { firstPpm: 50, lastPpm: 60, backgroundPpm: 8, seconds: 1800, ...exact };
    expect(() => twoPointAirChanges(fall)).toThrowError(noSolution);
    expect(() => twoPointAirChanges({ ...fall, lastPpm: 8 })).toThrowError(noSolution);
  });
});

test('20 m³ that halve in 1.4 h have 9.9 m³/h of fresh air', () => {
  // SOURCE: industrial-hygiene teaching note, Q = 0.693 V / t.
  expect(halfLifeFlowCubicMetresPerHour(20, 1.4 * 3600)).toBeCloseTo(9.9, 2);
});

describe('time until below a limit', () => {
  /** Minutes to remove 90, 99 and 99.9 %. SOURCE: CDC MMWR 43 (RR-13) 1994, table S3-1. */
  const CDC: readonly (readonly [number, number, number, number])[] = [
    [1, 138, 276, 414],
    [2, 69, 138, 207],
    [4, 35, 69, 104],
    [6, 23, 46, 69],
    [10, 14, 28, 41],
    [12, 12, 23, 35],
    [15, 9, 18, 28],
    [20, 7, 14, 21],
  ];

  test.each(CDC)('at %d changes an hour is the row of the CDC table', (airChangesPerHour, ...minutes) => {
    const air = { ppmNow: 1000, backgroundPpm: 0, airChangesPerHour, mixingFactor: 1 };
    [100, 10, 1].forEach((limitPpm, i) => {
      const seconds = secondsUntilBelow({ ...air, limitPpm });
      expect(Math.abs(seconds / 60 - (minutes[i] ?? Number.NaN))).toBeLessThan(0.6);
      expect(seconds).toBeCloseTo(removalSeconds(1 - limitPpm / 1000, airChangesPerHour), 6);
    });
  });

  test('20 to 1.4 takes 6.65 min at two changes a minute mixed five times worse than well', () => {
    // SOURCE: public HVAC design guide, ln(1.4/20) = -0.20 N gives 13.3 changes.
    const air = { ppmNow: 20, limitPpm: 1.4, backgroundPpm: 0, airChangesPerHour: 120, mixingFactor: 5 };
    expect(secondsUntilBelow(air) / 60).toBeCloseTo(6.65, 2);
  });

  test('is none when it is there already, and has no answer below the background', () => {
    const air = { ppmNow: 15, limitPpm: 20, backgroundPpm: 2, airChangesPerHour: 2, mixingFactor: 1 };
    expect(secondsUntilBelow(air)).toBe(0);
    expect(() => secondsUntilBelow({ ...air, limitPpm: 2 })).toThrowError(
      expect.objectContaining({ code: 'no-solution' }),
    );
    expect(() => secondsUntilBelow({ ...air, airChangesPerHour: 0 })).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });

  test('is where the box model says the level is', () => {
    const air = { ppmNow: 90, limitPpm: 20, backgroundPpm: 3, airChangesPerHour: 1.7, mixingFactor: 1 };
    const room = {
      volumeCubicMetres: 60,
      airCubicMetresPerHour: 102,
      sourceCubicMetresPerHour: 0,
      backgroundPpm: 3,
    };
    expect(roomPpmAfter(room, 90, secondsUntilBelow(air))).toBeCloseTo(20, 9);
  });
});

describe('the highest source that a room carries', () => {
  test('is the one that the box model settles at the limit with', () => {
    const room = {
      volumeCubicMetres: 100,
      airChangesPerHour: 2,
      limitPpm: 52,
      backgroundPpm: 2,
      mixingFactor: 1,
    };
    // SOURCE: worked box model: 100 m³, 200 m³/h, 0.010 m³/h, background 2: steady 52.0 ppm.
    expect(highestSourceCubicMetresPerHour(room)).toBeCloseTo(0.01, 12);
  });

  test('and the air needed for a source are each other’s inverse, 556 and 1667 m³/h for 20 ppm', () => {
    // SOURCE: worked example: 0.010 m³/h to hold 20 ppm over 2, K = 1 and K = 3.
    for (const [mixingFactor, flow] of [
      [1, 556],
      [3, 1667],
    ] as const) {
      const need = { sourceCubicMetresPerHour: 0.01, targetPpm: 20, backgroundPpm: 2, mixingFactor };
      const air = airNeededCubicMetresPerHour(need);
      expect(air).toBeCloseTo(flow, -1);
      const room = {
        volumeCubicMetres: 100,
        airChangesPerHour: air / 100,
        limitPpm: 20,
        backgroundPpm: 2,
        mixingFactor,
      };
      expect(highestSourceCubicMetresPerHour(room)).toBeCloseTo(0.01, 12);
    }
  });

  test('grows with air and limit, shrinks with bad mixing, and is none in a sealed room', () => {
    const rooms = fc.record({
      volumeCubicMetres: fc.double({ min: 1, max: 1000, noNaN: true }),
      airChangesPerHour: fc.double({ min: 0.01, max: 30, noNaN: true }),
      limitPpm: fc.double({ min: 10, max: 200, noNaN: true }),
      backgroundPpm: fc.double({ min: 0, max: 5, noNaN: true }),
      mixingFactor: fc.double({ min: 1, max: 10, noNaN: true }),
    });
    fc.assert(
      fc.property(rooms, (room) => {
        const source = highestSourceCubicMetresPerHour(room);
        expect(
          highestSourceCubicMetresPerHour({ ...room, airChangesPerHour: room.airChangesPerHour + 1 }),
        ).toBeGreaterThan(source);
        expect(highestSourceCubicMetresPerHour({ ...room, limitPpm: room.limitPpm + 1 })).toBeGreaterThan(
          source,
        );
        expect(highestSourceCubicMetresPerHour({ ...room, mixingFactor: 10 })).toBeLessThanOrEqual(source);
        expect(highestSourceCubicMetresPerHour({ ...room, airChangesPerHour: 0 })).toBe(0);
        const flow = room.airChangesPerHour * room.volumeCubicMetres;
        const settled = {
          ...room,
          airCubicMetresPerHour: flow,
          sourceCubicMetresPerHour: source * room.mixingFactor,
        };
        expect(steadyRoomPpm(settled)).toBeCloseTo(room.limitPpm, 6);
      }),
    );
  });
});

describe('the report of a decay', () => {
  const samples = [180, 152, 131, 111, 95, 82, 70].map((ppm, i) => ({ atMs: i * 300_000, ppm }));
  const room = { volumeCubicMetres: 60, limitPpm: 20 };

  test('carries the interval into flow, waiting time and source, mixed three times worse than well', () => {
    const report = decayReport({ backgroundPpm: 5, samples, room });
    expect(report.airCubicMetresPerHour?.value).toBeCloseTo(60 * 1.9718, 2);
    expect(report.airCubicMetresPerHour?.low).toBeCloseTo(60 * report.low, 9);
    // ln(65/15) x 3 / 1.9718 h
    expect((report.secondsUntilBelow?.value ?? 0) / 3600).toBeCloseTo((Math.log(65 / 15) * 3) / 1.9718, 3);
    expect(report.highestSourceCubicMetresPerHour?.value).toBeCloseTo((60 * 1.9718 * 15) / 3e6, 7);
    expect(report.secondsUntilBelow?.high).toBeGreaterThan(report.secondsUntilBelow?.value ?? 0);
    expect(report.highestSourceCubicMetresPerHour?.low).toBeLessThan(
      report.highestSourceCubicMetresPerHour?.value ?? 0,
    );
  });

  test('promises nothing without a fall, and no end where the slow end of the interval is none', () => {
    const rising = samples.map(({ atMs, ppm }) => ({ atMs, ppm: 300 - ppm }));
    expect(decayReport({ backgroundPpm: 5, samples: rising, room })).toMatchObject({
      airCubicMetresPerHour: null,
      secondsUntilBelow: null,
      highestSourceCubicMetresPerHour: null,
    });
    const ragged = [100, 70, 95, 60, 90].map((ppm, i) => ({ atMs: i * 300_000, ppm }));
    const report = decayReport({ backgroundPpm: 5, samples: ragged, room });
    expect(report.low).toBeLessThan(0);
    expect(report.secondsUntilBelow?.high).toBeNull();
    expect(report.highestSourceCubicMetresPerHour?.low).toBe(0);
  });
});
