import { describe, expect, test } from 'vitest';
import { HEAT_UP_PASCALS } from '../../../sensors-sim/operators/forge-operator.ts';
import { Forge } from '../../../sensors-sim/plant/forge.ts';
import { GasTrain } from '../../../sensors-sim/plant/gas-train.ts';
import { SteelLoad } from '../../../sensors-sim/plant/steel-load.ts';

const HOLD_PASCALS = 43_000;

function fired(setPascals: number) {
  const forge = new Forge(20);
  const gas = new GasTrain();
  const blank = { mark: 'blank', shape: 'plate', massKilograms: 1.5, sectionMetres: 0.016 } as const;
  const load = new SteelLoad([blank], 20);
  const step = (turnedTo = setPascals) => {
    gas.step({ setPascals: turnedTo, cylinderGaugePascals: 600_000, gasCelsius: 15 });
    const fuelKilogramsPerSecond = gas.flowKilogramsPerSecond;
    forge.step({ fuelKilogramsPerSecond, equivalenceRatio: 1.03, doorShare: 0, roomCelsius: 20, load }, 1);
  };
  return { forge, load, step };
}

function minutesTo870(setPascals: number): number {
  const { forge, step } = fired(setPascals);
  let seconds = 0;
  for (; forge.chamberCelsius < 870 && seconds < 7200; seconds += 1) step();
  return seconds / 60;
}

function settledCelsius(setPascals: number): number {
  const { forge, step } = fired(setPascals);
  for (let second = 0; second < 4 * 3600; second += 1) step();
  return forge.chamberCelsius;
}

describe('the gas forge', () => {
  test('goes from 20 to 870 °C in 20 to 45 minutes at 0.8 to 1.2 bar', () => {
    const minutes = [80_000, 95_000, 120_000].map(minutesTo870);
    for (const each of minutes) {
      expect(each).toBeGreaterThan(20);
      expect(each).toBeLessThan(45);
    }
    expect(minutes).toEqual([...minutes].sort((one, two) => two - one));
  });

  test('settles lower with less pressure', () => {
    const [low, middle, high] = [15_000, 50_000, 95_000].map(settledCelsius);
    expect(low).toBeGreaterThan(600);
    expect(low).toBeLessThan(760);
    expect(middle).toBeGreaterThan(840);
    expect(high).toBeGreaterThan((middle ?? 0) + 40);
    expect(high).toBeLessThan(1300);
  });

  // Common practice, no source: 10 to 40 °C a minute when the gas is turned fully up at working heat.
  test('climbs by 10 to 40 °C in the minute after the gas is turned fully up at working heat', () => {
    const { forge, step } = fired(HOLD_PASCALS);
    const { forge: up, step: turnUp } = fired(HOLD_PASCALS);
    for (let second = 0; second < 3 * 3600; second += 1) {
      step();
      turnUp();
    }
    expect(forge.chamberCelsius).toBeGreaterThan(840);
    const before = up.chamberCelsius;
    for (let second = 0; second < 60; second += 1) turnUp(HEAT_UP_PASCALS);
    expect(up.chamberCelsius - before).toBeGreaterThan(10);
    expect(up.chamberCelsius - before).toBeLessThan(40);
  });

  test('cools faster while cold gas blows through it unlit than with the gas shut and the bricks in', () => {
    const fiveMinutesOn = (lit: boolean, fuelKilogramsPerSecond: number) => {
      const { forge, step } = fired(HOLD_PASCALS);
      for (let second = 0; second < 3600; second += 1) step();
      const idle = { equivalenceRatio: 1, doorShare: 0, roomCelsius: 20, load: null };
      for (let second = 0; second < 300; second += 1) forge.step({ ...idle, lit, fuelKilogramsPerSecond }, 1);
      return forge.chamberCelsius;
    };
    const [shut, out, burning] = [
      fiveMinutesOn(true, 0),
      fiveMinutesOn(false, 0.8 / 3600),
      fiveMinutesOn(true, 0.8 / 3600),
    ];
    expect(out).toBeLessThan(shut - 15);
    expect(burning).toBeGreaterThan(shut + 15);
  });

  test('loses no heat and makes none: what was released is found again', () => {
    const { forge, step } = fired(80_000);
    const before = forge.storedJoules;
    for (let second = 0; second < 3600; second += 1) step();
    const { released, flue, openings, shell, load } = forge.ledger;
    expect(released).toBeGreaterThan(3e7);
    expect((flue + openings + shell + load + forge.storedJoules - before) / released).toBeCloseTo(1, 9);
  });

  test('cools faster with the bricks out, and gives no heat without gas', () => {
    const closed = fired(80_000);
    const open = fired(80_000);
    for (let second = 0; second < 1800; second += 1) {
      closed.step();
      open.step();
    }
    const idle = { fuelKilogramsPerSecond: 0, equivalenceRatio: 1, roomCelsius: 20, load: null };
    for (let second = 0; second < 600; second += 1) {
      closed.forge.step({ ...idle, doorShare: 0 }, 1);
      open.forge.step({ ...idle, doorShare: 1 }, 1);
    }
    expect(open.forge.chamberCelsius).toBeLessThan(closed.forge.chamberCelsius - 50);
    expect(Math.abs(closed.forge.gasCelsius - closed.forge.chamberCelsius)).toBeLessThan(1);
  });
});
