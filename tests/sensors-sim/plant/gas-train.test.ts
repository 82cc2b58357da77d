import { describe, expect, test } from 'vitest';
import { GasTrain, type GasTrainInput, SOUND_GAS } from '../../../sensors-sim/plant/gas-train.ts';

const ORDINARY: GasTrainInput = {
  setPascals: 80_000,
  cylinderGaugePascals: 600_000,
  gasCelsius: 15,
};

function settled(input: Partial<GasTrainInput>): GasTrain {
  const train = new GasTrain();
  for (let second = 0; second < 60; second += 1) train.step({ ...ORDINARY, ...input });
  return train;
}

describe('regulator and jet', () => {
  test('droop a little below the setting, and more at more flow', () => {
    const low = settled({ setPascals: 20_000 }).supplyGaugePascals / 20_000;
    const high = settled({}).supplyGaugePascals / 80_000;
    expect(low).toBeLessThan(1);
    expect(high).toBeLessThan(low);
    expect(high).toBeGreaterThan(0.85);
  });

  test('pass about 0.9 kg/h at 0.8 bar', () => {
    // SOURCE: nozzle flow of a 0.889 mm jet, 0.880 kg/h at 10 psi and 1.059 at 15 psi; 0.76 bar is 11.0 psi.
    const flow = settled({}).flowKilogramsPerSecond * 3600;
    expect(flow).toBeGreaterThan(0.88);
    expect(flow).toBeLessThan(0.95);
  });

  test('follow a cylinder that can no longer push, and an obstruction', () => {
    expect(settled({ cylinderGaugePascals: 30_000 }).supplyGaugePascals).toBeLessThan(30_000);
    expect(settled({ faults: { ...SOUND_GAS, ceilingPascals: 5_000 } }).supplyGaugePascals).toBe(5_000);
    expect(settled({ cylinderGaugePascals: 0 }).flowKilogramsPerSecond).toBe(0);
  });

  test('lock up a little above the setting when the burner is shut, and stay there', () => {
    const shut = settled({ burnerOpen: false, setPascals: 30_000 });
    expect(shut.supplyGaugePascals).toBeCloseTo(30_000 * 1.04, 6);
    expect(shut.flowKilogramsPerSecond).toBe(0);
  });

  test('with a leaking seat creep up to what the cylinder has, and no further', () => {
    const faults = { ...SOUND_GAS, creepPascalsPerSecond: 100 };
    const still = { burnerOpen: false, setPascals: 30_000, faults };
    expect(settled(still).supplyGaugePascals).toBeCloseTo(30_000 * 1.04 + 60 * 100, 6);
    expect(settled({ ...still, cylinderGaugePascals: 33_000 }).supplyGaugePascals).toBeCloseTo(33_000, 6);
    expect(settled({ setPascals: 80_000, faults }).supplyGaugePascals).toBe(settled({}).supplyGaugePascals);
  });

  test('lose pressure and flow in a kinked hose, and settle', () => {
    const kinked = settled({ faults: { ...SOUND_GAS, hoseLossPascals: 400_000 } });
    const sound = settled({});
    expect(kinked.supplyGaugePascals).toBeLessThan(0.75 * sound.supplyGaugePascals);
    expect(kinked.flowKilogramsPerSecond).toBeLessThan(0.9 * sound.flowKilogramsPerSecond);
    const before = kinked.supplyGaugePascals;
    kinked.step({ ...ORDINARY, faults: { ...SOUND_GAS, hoseLossPascals: 400_000 } });
    expect(Math.abs(kinked.supplyGaugePascals / before - 1)).toBeLessThan(0.01);
  });

  test('let less through a dirty jet at no less pressure', () => {
    const dirty = settled({ faults: { ...SOUND_GAS, jetShare: 0.4 } });
    expect(dirty.supplyGaugePascals).toBeGreaterThanOrEqual(settled({}).supplyGaugePascals);
    expect(dirty.flowKilogramsPerSecond).toBeLessThan(0.45 * settled({}).flowKilogramsPerSecond);
  });

  test('droop with a second burner while more leaves the cylinder', () => {
    const two = settled({ faults: { ...SOUND_GAS, droopShare: 0.5, extraFlowShare: 1 } });
    expect(two.supplyGaugePascals).toBeLessThan(0.8 * settled({}).supplyGaugePascals);
    expect(two.drawKilogramsPerSecond).toBeGreaterThan(1.3 * settled({}).drawKilogramsPerSecond);
  });

  test('empty the hose through the burner within seconds when the cylinder valve is shut', () => {
    const train = settled({});
    const shut = { ...ORDINARY, faults: { ...SOUND_GAS, valveOpen: false } };
    for (let second = 0; second < 20; second += 1) train.step(shut);
    expect(train.supplyGaugePascals).toBe(0);
    expect(train.drawKilogramsPerSecond).toBe(0);
  });

  test('shut means shut', () => {
    const train = settled({});
    train.step({ ...ORDINARY, setPascals: 0 });
    expect(train.supplyGaugePascals).toBe(0);
    expect(train.flowKilogramsPerSecond).toBe(0);
  });
});
