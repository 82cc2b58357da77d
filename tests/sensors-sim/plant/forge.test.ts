import { describe, expect, test } from 'vitest';
import { Forge } from '../../../sensors-sim/plant/forge.ts';
import { GasTrain } from '../../../sensors-sim/plant/gas-train.ts';
import { SteelLoad } from '../../../sensors-sim/plant/steel-load.ts';

function fired(setPascals: number) {
  const forge = new Forge(20);
  const gas = new GasTrain();
  const load = new SteelLoad({ massKilograms: 1.5, thicknessMetres: 0.016 }, 20);
  const step = () => {
    gas.step({ setPascals, cylinderGaugePascals: 600_000, ceilingPascals: Number.MAX_VALUE, gasCelsius: 15 });
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
  test('goes from 20 to 870 °C in 20 to 40 minutes at 0.5 to 1 bar', () => {
    const minutes = [50_000, 75_000, 100_000].map(minutesTo870);
    for (const each of minutes) {
      expect(each).toBeGreaterThan(20);
      expect(each).toBeLessThan(40);
    }
    expect(minutes).toEqual([...minutes].sort((one, two) => two - one));
  });

  test('settles lower with less pressure', () => {
    const [low, middle, high] = [15_000, 40_000, 80_000].map(settledCelsius);
    expect(low).toBeGreaterThan(600);
    expect(low).toBeLessThan(860);
    expect(middle).toBeGreaterThan(860);
    expect(high).toBeGreaterThan((middle ?? 0) + 40);
    expect(high).toBeLessThan(1300);
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
