import { describe, expect, test } from 'vitest';
import { OvenProgramme } from '../../../sensors-sim/operators/oven-programme.ts';
import { OVEN_FULL_WATTS, Oven } from '../../../sensors-sim/plant/oven.ts';
import { SteelLoad } from '../../../sensors-sim/plant/steel-load.ts';
import {
  HysteresisController,
  PidController,
  type TemperatureController,
} from '../../../sensors-sim/plant/temperature-controller.ts';

const BLADE = { mark: 'blade', shape: 'plate', massKilograms: 0.6, sectionMetres: 0.006 } as const;

/** Chamber temperatures of an oven that ramps to a target and holds it; the probe is perfect here. */
function programmed(controller: TemperatureController, targetCelsius: number, hours: number): number[] {
  const oven = new Oven(20);
  const load = new SteelLoad([BLADE], 20);
  const programme = new OvenProgramme(controller);
  const segment = { kind: 'ramp', targetCelsius, toleranceCelsius: 5, rateCelsiusPerHour: 600 } as const;
  programme.start();
  return Array.from({ length: hours * 3600 }, () => {
    const view = { segment, chamberCelsius: oven.chamberCelsius, weldedUntilExcessCelsius: null };
    const powerShare = programme.step(view, 1);
    oven.step({ powerShare, doorShare: 0, roomCelsius: 20, load }, 1);
    return oven.chamberCelsius;
  });
}

describe('the electric oven', () => {
  test('follows 600 °C an hour and holds 815 °C without going over the band', () => {
    const chamber = programmed(new PidController(), 815, 3);
    expect(((chamber[3599] ?? 0) - (chamber[1799] ?? 0)) * 2).toBeCloseTo(600, -2);
    expect(Math.max(...chamber)).toBeLessThan(818);
    const held = chamber.slice(2 * 3600);
    expect(Math.min(...held)).toBeGreaterThan(812);
  });

  // Common practice, no source: a small oven climbs 5 to 25 °C a minute at full power and 800 °C.
  test('climbs by 5 to 25 °C a minute when full power comes on at 800 °C', () => {
    const oven = new Oven(20);
    const controller = new PidController();
    for (let second = 0; second < 4 * 3600; second += 1) {
      const powerShare = controller.step(800, oven.chamberCelsius, 1);
      oven.step({ powerShare, doorShare: 0, roomCelsius: 20, load: null }, 1);
    }
    const rises = Array.from({ length: 5 }, () => {
      const before = oven.chamberCelsius;
      for (let second = 0; second < 60; second += 1) {
        oven.step({ powerShare: 1, doorShare: 0, roomCelsius: 20, load: null }, 1);
      }
      return oven.chamberCelsius - before;
    });
    for (const rise of rises) {
      expect(rise).toBeGreaterThan(5);
      expect(rise).toBeLessThan(25);
    }
  });

  test('is coldest by the door and hottest at the back, the more so with a worn seal', () => {
    const corners = (unevenness: number) => {
      const oven = new Oven(20);
      const input = { powerShare: 0.3, doorShare: 0, roomCelsius: 20, load: null, unevenness };
      for (let second = 0; second < 3 * 3600; second += 1) oven.step(input, 1);
      const middle = oven.chamberCelsius;
      return { front: middle - oven.frontCelsius, back: oven.backCelsius - middle };
    };
    const [sound, worn] = [corners(1), corners(4)];
    expect(sound.front).toBeGreaterThan(2);
    expect(sound.front).toBeLessThan(8);
    expect(sound.back).toBeGreaterThan(0.5);
    expect(worn.front).toBeCloseTo(4 * sound.front, 0);
  });

  test('holds a tempering heat as well, with far less power', () => {
    const held = programmed(new PidController(), 200, 2).slice(3600);
    expect(Math.min(...held)).toBeGreaterThan(197);
    expect(Math.max(...held)).toBeLessThan(203);
  });

  test('swings about the set point under a thermostat', () => {
    const held = programmed(new HysteresisController(4), 500, 3).slice(2 * 3600);
    expect(Math.min(...held)).toBeLessThan(499);
    expect(Math.max(...held)).toBeGreaterThan(501);
    expect(Math.max(...held) - Math.min(...held)).toBeLessThan(30);
  });

  test('loses no heat and makes none', () => {
    const oven = new Oven(20);
    const load = new SteelLoad([BLADE], 20);
    const before = oven.storedJoules;
    for (let second = 0; second < 3600; second += 1) {
      const doorShare = second > 3000 ? 1 : 0;
      oven.step({ powerShare: 0.4, doorShare, roomCelsius: 20, load }, 1);
    }
    const { electric, door, shell, load: taken } = oven.ledger;
    expect(electric).toBeCloseTo(0.4 * OVEN_FULL_WATTS * 3600, 3);
    expect((door + shell + taken + oven.storedJoules - before) / electric).toBeCloseTo(1, 9);
  });

  test('cannot give more than its full power', () => {
    const oven = new Oven(20);
    oven.step({ powerShare: 7, doorShare: 0, roomCelsius: 20, load: null }, 1);
    expect(oven.ledger.electric).toBe(OVEN_FULL_WATTS);
  });
});
