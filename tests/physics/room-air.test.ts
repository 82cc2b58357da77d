import { describe, expect, test } from 'vitest';
import {
  airNeededCubicMetresPerHour,
  type RoomAir,
  removalSeconds,
  roomPpmAfter,
  steadyRoomPpm,
} from '../../hub/physics/room-air.ts';

/** SOURCE: worked example of the single-zone box model, computed independently. */
const SHOP: RoomAir = {
  volumeCubicMetres: 100,
  airCubicMetresPerHour: 200,
  sourceCubicMetresPerHour: 0.01,
  backgroundPpm: 2,
};

/** Minutes to remove 90, 99 and 99.9 % by air changes an hour. SOURCE: CDC MMWR 43 (RR-13) 1994, table S3-1. */
const REMOVAL: readonly (readonly [number, number, number, number])[] = [
  [1, 138, 276, 414],
  [2, 69, 138, 207],
  [4, 35, 69, 104],
  [6, 23, 46, 69],
  [10, 14, 28, 41],
  [12, 12, 23, 35],
  [15, 9, 18, 28],
  [20, 7, 14, 21],
];

describe('a source in a ventilated room', () => {
  test('settles at 52 ppm by way of 21.7, 33.6 and 45.2 ppm', () => {
    expect(steadyRoomPpm(SHOP)).toBeCloseTo(52, 9);
    expect(roomPpmAfter(SHOP, 2, 900)).toBeCloseTo(21.7, 1);
    expect(roomPpmAfter(SHOP, 2, 1800)).toBeCloseTo(33.6, 1);
    expect(roomPpmAfter(SHOP, 2, 3600)).toBeCloseTo(45.2, 1);
  });

  test('has made 95 % of its rise after an hour and a half', () => {
    expect((roomPpmAfter(SHOP, 2, 5400) - 2) / 50).toBeCloseTo(0.95, 2);
  });

  test('reaches the same level in one step or in many', () => {
    let ppm = 2;
    for (let second = 0; second < 3600; second += 1) ppm = roomPpmAfter(SHOP, ppm, 1);
    expect(ppm).toBeCloseTo(roomPpmAfter(SHOP, 2, 3600), 6);
  });

  test('needs 556 m³/h to hold 20 ppm, and 1667 m³/h when the room mixes badly', () => {
    const need = { sourceCubicMetresPerHour: 0.01, targetPpm: 20, backgroundPpm: 2, mixingFactor: 1 };
    expect(airNeededCubicMetresPerHour(need)).toBeCloseTo(555.6, 1);
    expect(airNeededCubicMetresPerHour({ ...need, mixingFactor: 3 })).toBeCloseTo(1666.7, 1);
  });
});

describe('a sealed room', () => {
  /** SOURCE: control-engineering course problem, 1800 ft³ and 0.1 ml/s of CO; rise 7.06 ppm/h, 35 ppm after 5.0 h. */
  const sealed: RoomAir = {
    volumeCubicMetres: 1800 * 0.028316846592,
    airCubicMetresPerHour: 0,
    sourceCubicMetresPerHour: 0.1e-6 * 3600,
    backgroundPpm: 0,
  };

  test('rises by 7.06 ppm an hour to 35 ppm after five', () => {
    expect(roomPpmAfter(sealed, 0, 3600)).toBeCloseTo(7.06, 2);
    expect(roomPpmAfter(sealed, 0, 5 * 3600)).toBeCloseTo(35.3, 1);
  });

  test('never settles, and says so', () => {
    expect(() => steadyRoomPpm(sealed)).toThrowError(expect.objectContaining({ code: 'no-solution' }));
    expect(steadyRoomPpm({ ...sealed, sourceCubicMetresPerHour: 0, backgroundPpm: 3 })).toBe(3);
  });
});

describe('removal by air changes', () => {
  test.each(REMOVAL)(
    'at %d an hour takes the minutes of the CDC table',
    (changes, ninety, ninetyNine, thousandth) => {
      expect(Math.abs(removalSeconds(0.9, changes) / 60 - ninety)).toBeLessThan(0.6);
      expect(Math.abs(removalSeconds(0.99, changes) / 60 - ninetyNine)).toBeLessThan(0.6);
      expect(Math.abs(removalSeconds(0.999, changes) / 60 - thousandth)).toBeLessThan(0.6);
    },
  );

  test('agrees with the decay of the box model', () => {
    const quiet = { ...SHOP, sourceCubicMetresPerHour: 0, backgroundPpm: 0 };
    expect(roomPpmAfter(quiet, 100, removalSeconds(0.9, 2))).toBeCloseTo(10, 9);
  });
});

describe('refusals', () => {
  test('a target below the background, a mixing factor below 1 and a negative source have no answer', () => {
    const need = { sourceCubicMetresPerHour: 0.01, targetPpm: 2, backgroundPpm: 2, mixingFactor: 1 };
    expect(() => airNeededCubicMetresPerHour(need)).toThrowError(
      expect.objectContaining({ code: 'no-solution' }),
    );
    const outOfRange = expect.objectContaining({ code: 'out-of-range' });
    expect(() => airNeededCubicMetresPerHour({ ...need, mixingFactor: 0.5 })).toThrowError(outOfRange);
    expect(() => roomPpmAfter({ ...SHOP, sourceCubicMetresPerHour: -1 }, 0, 60)).toThrowError(outOfRange);
  });
});
