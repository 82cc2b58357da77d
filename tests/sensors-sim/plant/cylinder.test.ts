import { describe, expect, test } from 'vitest';
import { Cylinder } from '../../../sensors-sim/plant/cylinder.ts';

const PER_SECOND = 1.5 / 3600;

describe('a propane cylinder', () => {
  test('cools by about 34 °C an hour at 1.5 kg/h when the room gives it nothing', () => {
    // SOURCE: 146 W of latent heat against a half-full 20-lb steel cylinder, computed independently.
    const cylinder = new Cylinder({ massKilograms: 4.5, liquidCelsius: 15 });
    const before = cylinder.liquidCelsius;
    for (let second = 0; second < 120; second += 1) cylinder.step(PER_SECOND, cylinder.liquidCelsius, 1);
    expect(Math.abs((before - cylinder.liquidCelsius) * 30 - 34)).toBeLessThan(1.5);
  });

  test('shows 735 kPa at 20 °C whatever is in it, as long as some of it is liquid', () => {
    // SOURCE: Lemmon, McLinden and Wagner (2009) equation of state, 836.5 kPa absolute.
    const full = new Cylinder({ massKilograms: 9, liquidCelsius: 20 });
    const nearlyEmpty = new Cylinder({ massKilograms: 0.3, liquidCelsius: 20 });
    expect(full.gaugePascals / 1000).toBeCloseTo(735.2, 0);
    expect(nearlyEmpty.gaugePascals).toBe(full.gaugePascals);
  });

  test('settles where the room warms it as fast as the draw cools it', () => {
    const cylinder = new Cylinder({ massKilograms: 9, liquidCelsius: 18 });
    for (let second = 0; second < 3600; second += 1) cylinder.step(PER_SECOND / 3, 18, 1);
    const early = cylinder.liquidCelsius;
    for (let second = 0; second < 3 * 3600; second += 1) cylinder.step(PER_SECOND / 3, 18, 1);
    expect(early).toBeLessThan(15);
    expect(cylinder.liquidCelsius).toBeGreaterThan(0);
    for (let second = 0; second < 4 * 3600; second += 1) cylinder.step(0, 18, 1);
    expect(cylinder.liquidCelsius).toBeGreaterThan(10);
  });

  test('gives no more than it holds and ends without pressure', () => {
    const cylinder = new Cylinder({ massKilograms: 0.2, liquidCelsius: 18 });
    let drawn = 0;
    for (let second = 0; second < 3600; second += 1) drawn += cylinder.step(PER_SECOND, 18, 1);
    expect(drawn).toBeCloseTo(0.2, 12);
    expect(cylinder.massKilograms).toBeCloseTo(0, 12);
    expect(cylinder.drawnKilograms).toBeCloseTo(drawn, 12);
    expect(cylinder.gaugePascals).toBeCloseTo(0, 6);
  });
});
