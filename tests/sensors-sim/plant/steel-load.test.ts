import { describe, expect, test } from 'vitest';
import { type Material, sensibleEnthalpy, structuralSteel } from '../../../hub/physics/heat/material.ts';
import { type LoadPlace, SteelLoad } from '../../../sensors-sim/plant/steel-load.ts';
import type { PieceSize } from '../../../sensors-sim/plant/steel-piece.ts';

/** Minutes for a plate heated on both faces. SOURCE: lumped calculation with the specific heat of EN 1993-1-2,
 * density 7850, emissivity 0.8, film 10 W/(m² K), computed independently. */
const REFERENCE: readonly (readonly [number, number, number])[] = [
  [3, 4.1, 13.5],
  [6, 8.2, 27.0],
  [12, 16.3, 54.1],
  [25, 34.0, 112.6],
];

const plate = (millimetres: number): PieceSize => ({
  mark: `plate ${millimetres}`,
  shape: 'plate',
  sectionMetres: millimetres / 1000,
  massKilograms: 1,
});

function heated(sizes: readonly PieceSize[], furnaceCelsius: number, material?: Material) {
  const load = new SteelLoad(sizes, 20, material);
  const around = { wallCelsius: furnaceCelsius, gasCelsius: furnaceCelsius, film: 10 };
  return { load, step: () => load.heat(around, 1) };
}

function minutesToReach(millimetres: number, furnaceCelsius: number, wantedCelsius: number): number {
  const { load, step } = heated([plate(millimetres)], furnaceCelsius, structuralSteel());
  let seconds = 0;
  for (; load.thickest.meanCelsius < wantedCelsius; seconds += 1) step();
  return seconds / 60;
}

describe('a plate in a furnace', () => {
  test.each(REFERENCE)(
    'of %d mm reaches 805 in 815 °C after %d min and 195 in 200 °C after %d min',
    (mm, hot, warm) => {
      expect(Math.abs(minutesToReach(mm, 815, 805) / hot - 1)).toBeLessThan(0.03);
      expect(Math.abs(minutesToReach(mm, 200, 195) / warm - 1)).toBeLessThan(0.03);
    },
  );

  test('takes exactly the heat that the furnace pays, the heat of transformation among it', () => {
    // SOURCE: Hagel, Pound and Mehl, Acta Met. 4 (1956) 37: 82 J/g of plain eutectoid steel.
    const { load, step } = heated([plate(6)], 815);
    const paid = Array.from({ length: 3600 }, step).reduce((sum, gain) => sum + gain.wall + gain.gas, 0);
    expect(Math.abs(paid / (sensibleEnthalpy(load.thickest.meanCelsius) + 82_000) - 1)).toBeLessThan(0.002);
  });

  test('stands still at its transformation while a thinner one beside it has passed', () => {
    const { load, step } = heated([plate(25), plate(3)], 815);
    for (let second = 0; second < 12 * 60; second += 1) step();
    const [thick, thin] = load.truth();
    expect(load.thickest.size.mark).toBe('plate 25');
    expect(load.thinnest.coreCelsius).toBeGreaterThan(810);
    expect(thick?.coreCelsius).toBeLessThan(735);
    expect(thin?.austenite).toBe(1);
    expect(thick?.austenite).toBe(0);
  });

  test('is hotter at its skin than at its core on the way, the thicker the more, and evens out', () => {
    const { load, step } = heated([plate(50), plate(6)], 815);
    for (let second = 0; second < 200; second += 1) step();
    const spread = () => load.truth().map((each) => each.surfaceCelsius - each.coreCelsius);
    const [thick = 0, thin = 0] = spread();
    expect(thick).toBeGreaterThan(15);
    expect(thin).toBeLessThan(5);
    for (let second = 0; second < 3 * 3600; second += 1) step();
    expect(Math.max(...spread())).toBeLessThan(0.5);
  });

  test('by the door stays as much colder as it is there', () => {
    const load = new SteelLoad([plate(4), { ...plate(4), mark: 'door', spot: 'door' }], 20);
    const around = { wallCelsius: 815, gasCelsius: 815, film: 25, doorDropCelsius: 20 };
    for (let second = 0; second < 3600; second += 1) load.heat(around, 1);
    const [middle, door] = load.truth();
    expect((middle?.coreCelsius ?? 0) - (door?.coreCelsius ?? 0)).toBeCloseTo(20, 0);
  });

  test('does not cool while it lies inside', () => {
    const load = new SteelLoad([plate(10)], 800);
    load.coolOutside(18, 60);
    expect(load.thickest.meanCelsius).toBe(800);
  });

  test('a load of nothing is refused', () => {
    expect(() => new SteelLoad([], 20)).toThrowError(expect.objectContaining({ code: 'bad-plan' }));
  });
});

describe('a plate outside the furnace', () => {
  const cooledIn = (place: LoadPlace, seconds: number) => {
    const load = new SteelLoad([plate(12)], 860);
    load.move(place);
    for (let second = 0; second < seconds; second += 1) load.coolOutside(18, 1);
    return load.thickest.meanCelsius;
  };

  test('cools fastest in the quench, then in air, ash and vermiculite', () => {
    const seen = (['quench', 'still-air', 'ash', 'vermiculite'] as const).map((place) =>
      cooledIn(place, 300),
    );
    expect(seen).toEqual([...seen].sort((one, two) => one - two));
    expect(seen[0]).toBeLessThan(60);
  });

  test('never falls below what it lies in', () => {
    expect(cooledIn('quench', 3600)).toBeCloseTo(45, 1);
    expect(cooledIn('still-air', 6 * 3600)).toBeGreaterThanOrEqual(18);
  });
});
